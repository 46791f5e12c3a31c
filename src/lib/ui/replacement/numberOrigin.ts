import type { SourceTag } from '../../content/exhibit';
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
