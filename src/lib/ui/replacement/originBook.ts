import type { Source } from '../../content/exhibit';
import type { ScreenText } from '../../kiosk/text.svelte';
import type { OriginBook } from './numberOrigin';

/** The works that each kind of number rests on, by the ids of content/sources.yaml. */
const RESTS_ON: Readonly<Partial<Record<string, readonly string[]>>> = {
	'wave-length': ['demar-1972', 'osborn-1974'],
	scheme: ['poole-1961'],
	inhibition: ['osborn-1974'],
};

/** Where the room's own numbers come from: words under `repl_how_<name>`, works from the exhibit's list. */
export function originBook(text: ScreenText, sources: readonly Source[]): OriginBook {
	const known = new Map(sources.map((source) => [source.id, source]));
	return (name) => ({
		how: text.say(`repl_how_${name}`),
		sources: (RESTS_ON[name] ?? []).flatMap((id) => known.get(id) ?? []),
	});
}
