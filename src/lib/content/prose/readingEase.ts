import { countWords } from '../proseFindings';
import { syllablesEnglish } from './syllablesEnglish';
import { syllablesFrench } from './syllablesFrench';
import { syllablesGerman } from './syllablesGerman';
import { syllablesSpanish } from './syllablesSpanish';

export interface TextCounts {
	words: number;
	sentences: number;
	syllables: number;
}

interface Ease {
	/** `base - perSentence * words/sentences - perWord * syllables/words` */
	base: number;
	perSentence: number;
	perWord: number;
	syllables(word: string): number;
}

/**
 * English: Flesch reading ease. French: Kandel and Moles. German: Amstad. Spanish: Fernández Huerta in its corrected reading, by
 * words per sentence (many copies count sentences per 100 words instead).
 */
const FORMULAS: Readonly<Record<string, Ease>> = {
	en: { base: 206.835, perSentence: 1.015, perWord: 84.6, syllables: syllablesEnglish },
	fr: { base: 207, perSentence: 1.015, perWord: 73.6, syllables: syllablesFrench },
	de: { base: 180, perSentence: 1, perWord: 58.5, syllables: syllablesGerman },
	es: { base: 206.84, perSentence: 1.02, perWord: 60, syllables: syllablesSpanish },
};

/**
 * Reading ease from counts: 90 and more for a child of eleven, 60 to 70 for ages 13 to 15, below 30 for graduates.
 * null for a text without words and for a language without a formula.
 */
export function readingEase({ words, sentences, syllables }: TextCounts, language: string): number | null {
	const formula = Object.hasOwn(FORMULAS, language) ? FORMULAS[language] : undefined;
	if (!formula || words === 0 || sentences === 0) return null;
	return formula.base - (formula.perSentence * words) / sentences - (formula.perWord * syllables) / words;
}

/** Counts of running text given sentence by sentence; null for a language whose syllables cannot be counted. */
export function countText(sentences: readonly string[], language: string): TextCounts | null {
	const formula = Object.hasOwn(FORMULAS, language) ? FORMULAS[language] : undefined;
	if (!formula) return null;
	const counts: TextCounts = { words: 0, sentences: 0, syllables: 0 };
	for (const sentence of sentences) {
		const words = countWords(sentence);
		if (words === 0) continue;
		counts.words += words;
		counts.sentences++;
		const plain = sentence.replace(/\]\([^)]{0,500}\)/g, ']');
		for (const [word] of plain.matchAll(/\p{L}[\p{L}\p{M}]*/gu)) counts.syllables += formula.syllables(word);
		// a number in figures counts as one syllable: its words are not on the screen
		counts.syllables += plain.match(/(?<![\p{L}\p{N}.,])\p{N}[\p{N}.,]*/gu)?.length ?? 0;
	}
	return counts;
}
