import type { SourceTag } from '../../content/exhibit';
import type { NumberView } from '../../content/replacement/view';
import type { CitationView } from '../../content/view';

/** Where a number on screen comes from. */
export interface NumberOrigin {
	/** how it was worked out, in words */
	how: string;
	sources: readonly CitationView[];
	/** how sure the number itself is, where that differs from its source */
	tag?: SourceTag;
}

/** Looks up where a number comes from, by the name of the number. */
export type OriginBook = (name: string) => NumberOrigin;

/** The origin of numbers that stand in a table: `how` says what was made of them. */
export function originOf(how: string, ...numbers: readonly (NumberView | undefined)[]): NumberOrigin {
	const given = numbers.filter((number) => number !== undefined);
	const sources = [...new Map(given.map(({ source }) => [source.citation, source])).values()];
	const marks = given.map(({ mark }) => mark);
	const tag = (['memory', 'second-hand', 'ours'] as const).find((mark) => marks.includes(mark));
	return tag ? { how, sources, tag } : { how, sources };
}
