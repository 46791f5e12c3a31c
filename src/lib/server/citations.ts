import type { Source } from '../content/exhibit';
import type { CitationView } from '../content/view';

/** The works behind ids, each once. */
export function citations(ids: readonly string[], sources: ReadonlyMap<string, Source>): CitationView[] {
	return [...new Set(ids)].flatMap((id) => {
		const source = sources.get(id);
		if (!source) return [];
		const { citation, doi, tag } = source;
		return [doi === undefined ? { citation, tag } : { citation, doi, tag }];
	});
}
