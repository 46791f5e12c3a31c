import { diffWordsWithSpace } from 'diff';

export interface DiffPart {
	text: string;
	/** in: only in the later text; out: only in the earlier; same: in both */
	is: 'in' | 'out' | 'same';
}

/** What differs between two texts, word by word. */
export const wordDiff = (before: string, after: string): DiffPart[] =>
	diffWordsWithSpace(before, after).map(({ value, added, removed }) => ({
		text: value,
		is: added ? 'in' : removed ? 'out' : 'same',
	}));
