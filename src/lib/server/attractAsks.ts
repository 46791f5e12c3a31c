import type { Exhibit } from '../content/exhibit';
import type { AttractAsks } from '../content/view';

/** Beginning of the names of questions in content/ui. */
const ASK = 'attract_ask_';

/** The questions of the attract loop in every language, the first language first: nobody has chosen one yet. */
export function attractAsks({ languages, ui }: Pick<Exhibit, 'languages' | 'ui'>): AttractAsks[] {
	const first = ui[languages[0]?.code] ?? {};
	const keys = Object.keys(first).filter((key) => key.startsWith(ASK));
	return languages.map(({ code, name }) => ({
		lang: code,
		name,
		asks: keys.map((key) => ui[code]?.[key] ?? first[key]),
		touch: ui[code]?.attract_touch ?? first.attract_touch ?? '',
	}));
}
