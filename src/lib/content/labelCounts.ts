import { countText, readingEase } from './prose/readingEase';
import {
	countWords,
	LEAST_EASE,
	MOST_WORDS_IN_LABEL,
	MOST_WORDS_IN_SENTENCE,
	sentences,
} from './proseFindings';
import { textBlocks } from './renderMarkdown';

/** easy and fair: no warning is given; hard: one is */
export type EaseBand = 'easy' | 'fair' | 'hard';

/** How long a label is and how it reads, each figure beside its bound. */
export interface LabelCounts {
	words: number;
	mostWords: number;
	/** words of the longest sentence */
	sentence: number;
	mostInSentence: number;
	/** null where the label is too short to tell, or its language has no formula */
	ease: { value: number; band: EaseBand } | null;
}

/** Counts of a label's Markdown, by the same rules as its warnings (proseFindings). */
export function labelCounts(body: string, language: string): LabelCounts {
	const read = textBlocks(body).flatMap(({ content }) => sentences(content).map(({ text }) => text));
	const lengths = read.map(countWords);
	const words = lengths.reduce((sum, length) => sum + length, 0);
	const counts = countText(read, language);
	const ease = counts && words >= LEAST_EASE.shortFromWords ? readingEase(counts, language) : null;
	const least = words >= LEAST_EASE.fromWords ? LEAST_EASE.ease : LEAST_EASE.shortEase;
	return {
		words,
		mostWords: language === 'en' ? MOST_WORDS_IN_LABEL.en : MOST_WORDS_IN_LABEL.other,
		sentence: Math.max(0, ...lengths),
		mostInSentence: MOST_WORDS_IN_SENTENCE,
		ease:
			ease === null
				? null
				: { value: ease, band: ease < least ? 'hard' : ease < least + 10 ? 'fair' : 'easy' },
	};
}
