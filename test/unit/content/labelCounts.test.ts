import { describe, expect, it } from 'vitest';
import { labelCounts } from '../../../src/lib/content/labelCounts';
import { proseFindings } from '../../../src/lib/content/proseFindings';

const EASY = 'Two sharp edges run from the tip to the base. '.repeat(5);

describe('labelCounts', () => {
	it('counts words and the longest sentence without the marks of Markdown', () => {
		const { words, sentence, mostWords, mostInSentence } = labelCounts(
			'**What we see.** A *blunt* tip.',
			'en',
		);
		expect({ words, sentence, mostWords, mostInSentence }).toEqual({
			words: 6,
			sentence: 3,
			mostWords: 100,
			mostInSentence: 25,
		});
		expect(labelCounts('', 'fr')).toMatchObject({ words: 0, sentence: 0, mostWords: 125, ease: null });
	});

	it('says nothing of ease for a short text and for a language without a formula', () => {
		expect(labelCounts('A blunt tip.', 'en').ease).toBeNull();
		expect(labelCounts(EASY, 'eo').ease).toBeNull();
	});

	it('calls hard exactly what the check warns of', () => {
		const hard = `${'Palaeontological interpretations necessitate comparative morphological investigations. '.repeat(6)}`;
		for (const text of [EASY, hard]) {
			const warned = proseFindings(text, 0, 'en').some(({ id }) => id === 'hard-to-read');
			expect(labelCounts(text, 'en').ease?.band === 'hard').toBe(warned);
		}
		expect(labelCounts(EASY, 'en').ease?.band).toBe('easy');
		expect(labelCounts(hard, 'en').ease?.band).toBe('hard');
	});
});
