import { describe, expect, it } from 'vitest';
import { countWords, proseFindings } from '../../../src/lib/content/proseFindings';

const words = (n: number) => `${Array.from({ length: n }, (_, i) => `word${i}`).join(' ')}.`;
const short = (n: number) => Array(n).fill('One two three four five.').join('\n');

describe('proseFindings', () => {
	// 25 words a sentence and 100 a label: Smithsonian guidelines for accessible exhibition design
	it('allows 25 words in a sentence, not 26', () => {
		expect(proseFindings(words(25), 0, 'en')).toEqual([]);
		expect(proseFindings(words(26), 0, 'en').map(({ id }) => id)).toEqual(['long-sentence']);
	});

	it('allows 100 words in an English text, and 125 in another language', () => {
		expect(proseFindings(short(20), 0, 'en')).toEqual([]);
		expect(proseFindings(short(21), 0, 'en').map(({ id, message }) => [id, message])).toEqual([
			['long-label', 'The text has 105 words; 100 is the most that visitors read while standing.'],
		]);
		expect(proseFindings(short(25), 0, 'fr')).toEqual([]);
		expect(proseFindings(short(26), 0, 'es').map(({ id }) => id)).toEqual(['long-label']);
	});

	it('finds the line and column where the sentence begins', () => {
		const body = `\nFirst one.\n\n- A short point. ${words(30)}\n- Another.\n`;
		expect(proseFindings(body, 7, 'en').map(({ id, line, column }) => ({ id, line, column }))).toEqual([
			{ id: 'long-sentence', line: 11, column: 18 },
		]);
	});

	it('counts words, not signs or addresses', () => {
		expect(countWords("The lizard's 38.1 mm tooth – *sharp*, isn't it?")).toBe(8);
		expect(countWords('See [the paper](https://example.org/a-b-c)')).toBe(3);
		expect(countWords('La dent d’un mosasaure')).toBe(4);
		expect(countWords('')).toBe(0);
	});
});
