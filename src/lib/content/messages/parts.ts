/** What the wording of every language is put together from. Nothing here is a word. */

/** What a curator reads: what was found and what is expected; then what to do, with one correct example. */
export interface Wording {
	message: string;
	remedy: string;
}

export const say = (message: string, remedy: string): Wording => ({ message, remedy });

/** A text on one line, cut to `most` signs. */
export const short = (text: string, most = 60) => {
	const line = text.replace(/\s+/g, ' ').trim();
	return line.length > most ? `${line.slice(0, most - 1).trimEnd()}…` : line;
};
/** A text as YAML in double quotes. */
export const quoted = (text: string) => `"${text.replace(/"/g, "'")}"`;

/** A number as it is typed into a file. */
export const number = (value: number) => String(Number(value.toPrecision(4)));
/** A limit as it is typed into a file, rounded to its safe side. */
export const atMost = (value: number) => String(roundedDown(value));
export const atLeast = (value: number) => String(roundedUp(value));
/** Three digits, no more and no less than the limit. */
export const roundedDown = (value: number) => safe(value, Math.floor);
export const roundedUp = (value: number) => safe(value, Math.ceil);
function safe(value: number, towards: (n: number) => number): number {
	if (value === 0 || !Number.isFinite(value)) return value;
	const step = 10 ** (2 - Math.floor(Math.log10(Math.abs(value))));
	// a hair of slack, so that 0.3 does not become 0.299
	const slack = towards === Math.floor ? 1e-9 : -1e-9;
	return Number((towards(value * step + slack) / step).toPrecision(3));
}

/** The last key of a path: `shape.model.sections[1].at` -> `at`. */
export const lastKey = (path: string) => path.replace(/\[\d+\]$/, '').replace(/^.*[.\]]/, '');

/** A value as it was found: as it is written, or several where one was expected. */
export type Shown = string | { several: 'list' | 'fields' };
/** A value at a path. */
export interface Found {
	path: string;
	found: Shown;
}
/** A language of the exhibit, with its own name for itself. */
export interface Tongue {
	code: string;
	name: string;
}

/** How a language is called in another (`anglais`), or by its own name where that is not known. */
export function languageName({ code, name }: Tongue, within: string): string {
	try {
		return new Intl.DisplayNames(within, { type: 'language', fallback: 'none' }).of(code) ?? name;
	} catch {
		return name;
	}
}

/** Writes numbers as a language does, four digits that count. */
export function numbersIn(language: string): (value: number) => string {
	const format = new Intl.NumberFormat(language, { maximumSignificantDigits: 4 });
	return (value) => format.format(value);
}
/** Lists as a language writes them: `a, b or c`. */
export function listsIn(language: string): (words: readonly string[], join?: 'or' | 'and') => string {
	const formats = {
		or: new Intl.ListFormat(language, { type: 'disjunction' }),
		and: new Intl.ListFormat(language, { type: 'conjunction' }),
	};
	return (words, join = 'or') => formats[join].format(words);
}
