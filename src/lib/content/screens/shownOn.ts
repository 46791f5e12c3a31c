import type { Exhibit, RoomId, Screen } from '../exhibit';
import { RELOAD_AT_min, STAYS_LIT_min, type OpenHours, type ScreenSettings } from './types';

/** What a page needs to know of the screen that it stands on, beside rooms, size and languages. */
export interface ScreenHere {
	/** the name that it was opened with; null for none */
	name: string | null;
	/** false where screens.yaml does not know that name */
	known: boolean;
	/** loudest amplitude, 0 .. 1 */
	gain: number;
	lowReach: boolean;
	printer: boolean;
	/** null = lit always */
	hours: readonly OpenHours[] | null;
	reloadAt_min: number;
	staysLit_min: number;
}

/** What one screen shows of an exhibit. */
export interface ShownOn<L> {
	rooms: readonly RoomId[];
	screen: Screen;
	/** the one that it starts in first */
	languages: L[];
	here: ScreenHere;
}

/** How the names of screens are written in `?screen=`; others are nobody's. */
export const SCREEN_NAME = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const LONGEST_NAME = 60;

/** A name as an address or a cookie says it; null for what cannot be one. */
export const cleanScreenName = (said: string | null | undefined): string | null =>
	said && said.length <= LONGEST_NAME && SCREEN_NAME.test(said) ? said : null;

/** An exhibit as the screen of that name shows it; for a name that nobody has set up as exhibit.yaml says. */
export function shownOn<L extends { code: string }>(
	exhibit: Pick<Exhibit, 'rooms' | 'screen' | 'screens'> & { languages: readonly L[] },
	name: string | null,
): ShownOn<L> {
	const found: Partial<ScreenSettings> = exhibit.screens?.find(({ id }) => id === name) ?? {};
	const { firstLanguage } = found;
	// a room may have left the exhibit since the screens were read
	const rooms = found.rooms?.filter((room) => exhibit.rooms.includes(room)) ?? [];
	return {
		rooms: rooms.length > 0 ? rooms : exhibit.rooms,
		screen: found.screen ?? exhibit.screen,
		languages: [
			...exhibit.languages.filter(({ code }) => code === firstLanguage),
			...exhibit.languages.filter(({ code }) => code !== firstLanguage),
		],
		here: {
			name,
			known: name === null || found.id !== undefined,
			gain: (found.volumePercent ?? 100) / 100,
			lowReach: found.reach === 'low',
			printer: found.printer ?? true,
			hours: found.hours ?? null,
			reloadAt_min: found.reloadAt_min ?? RELOAD_AT_min,
			staysLit_min: found.staysLit_min ?? STAYS_LIT_min,
		},
	};
}
