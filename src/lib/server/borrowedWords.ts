import type { Exhibit } from '../content/exhibit';
import { languageGaps } from './languageGaps';

/** What a page in a language has to say in the exhibit's first one, because its own is not written yet. */
export interface BorrowedWords {
	/** the language that they are in */
	lang: string;
	/** keys of ui/ */
	keys: string[];
	/** everything that is said without values to fill in, as it stands on the page */
	words: string[];
}

const known = new WeakMap<Exhibit, Map<string, BorrowedWords | null>>();

/** null where nothing is missing. */
export function borrowedWords(exhibit: Exhibit, lang: string): BorrowedWords | null {
	const first = exhibit.languages[0].code;
	if (lang === first) return null;
	let byLang = known.get(exhibit);
	if (!byLang) known.set(exhibit, (byLang = new Map()));
	const before = byLang.get(lang);
	if (before !== undefined) return before;
	const gaps = languageGaps(exhibit, lang);
	const words = gaps.flatMap(({ missing }) => missing.map((gap) => gap.words));
	const made =
		words.length === 0
			? null
			: {
					lang: first,
					keys: gaps
						.filter(({ file }) => file.startsWith('ui/'))
						.flatMap(({ missing }) => missing.map(({ key }) => key)),
					words: [...new Set(words)],
				};
	byLang.set(lang, made);
	return made;
}
