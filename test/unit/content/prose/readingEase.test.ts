import { describe, expect, it } from 'vitest';
import { countText, readingEase } from '../../../../src/lib/content/prose/readingEase';

// Formulas: Flesch; Kandel and Moles as in textstat and textacy; Amstad; Fernández Huerta as corrected by Law 2011
// (legible.es). Expected values were worked out from these by hand, to the places given.
describe('readingEase', () => {
	it.each([
		['en', 'The cat sat on the mat.', [6, 1, 6], 116.145],
		[
			'en',
			'This sentence, taken as a reading passage unto itself, is being used to prove a point.',
			[16, 1, 23],
			68.98,
		],
		['en', 'A shark can grow thousands of teeth in its life.', [10, 1, 11], 103.625],
		['es', 'El gato duerme en la casa.', [6, 1, 9], 110.72],
		['es', 'Los tiburones pierden miles de dientes durante su vida.', [9, 1, 18], 77.66],
		['de', 'Der Hund schläft im Haus.', [5, 1, 5], 116.5],
		['de', 'Haie verlieren im Laufe ihres Lebens tausende Zähne.', [8, 1, 17], 47.69],
		['fr', 'Le chat dort sur le lit.', [6, 1, 6], 127.31],
		['fr', 'Le requin perd des milliers de dents.', [7, 1, 9], 105.27],
	] as const)('%s: %s', (language, sentence, [words, sentences, syllables], ease) => {
		const counts = countText([sentence], language);
		expect(counts).toEqual({ words, sentences, syllables });
		// published to two places
		expect(Math.abs(readingEase(counts!, language)! - ease)).toBeLessThan(0.0051);
	});

	it('agrees with the formulas worked by hand on counts alone', () => {
		expect(readingEase({ words: 100, sentences: 5, syllables: 130 }, 'en')).toBeCloseTo(76.555, 6);
		// published value of the English formula for a counted text: 60, to whole numbers
		expect(readingEase({ words: 249, sentences: 29, syllables: 406 }, 'en')).toBeCloseTo(60.18, 2);
		expect(readingEase({ words: 249, sentences: 29, syllables: 406 }, 'de')).toBeCloseTo(76.03, 2);
	});

	it('says nothing of an empty text or of a language it does not know', () => {
		expect(readingEase({ words: 0, sentences: 0, syllables: 0 }, 'en')).toBeNull();
		expect(countText([], 'en')).toEqual({ words: 0, sentences: 0, syllables: 0 });
		expect(countText(['Pies śpi.'], 'pl')).toBeNull();
		expect(readingEase({ words: 5, sentences: 1, syllables: 5 }, 'constructor')).toBeNull();
	});

	it('takes figures as one syllable, and leaves addresses out', () => {
		expect(countText(['It is 38.1 mm tall.'], 'en')).toEqual({ words: 5, sentences: 1, syllables: 5 });
		expect(countText(['See [a page](https://example.org/a).'], 'en')!.syllables).toBe(3);
	});
});
