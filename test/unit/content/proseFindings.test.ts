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

	it('warns of long words from 30 words on, and sooner from 100 words on', () => {
		const hard = (n: number) => Array(n).fill('Comparison of material helps us.').join(' ');
		const ids = (body: string) => proseFindings(body, 0, 'en').map(({ id }) => id);
		// 5 words, 11 syllables: 206.835 - 1.015 * 5 - 84.6 * 2.2 = 15.64
		expect(ids(hard(5))).toEqual([]);
		expect(ids(hard(6))).toEqual(['hard-to-read']);
		// 10 words, 17 syllables in 2 sentences: 206.835 - 1.015 * 5 - 84.6 * 1.7 = 57.94
		const fair = (n: number) =>
			Array(n).fill('Comparison of material helps us. Many old teeth are here.').join(' ');
		expect(ids(fair(9))).toEqual([]);
		expect(ids(fair(10))).toEqual(['hard-to-read']);
		expect(proseFindings(hard(6), 0, 'pl')).toEqual([]);
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
