import type { ScreenBeat } from './beat';

/** What staff see of one screen; plain data. */
export interface ScreenRow {
	key: string;
	name: string | null;
	/** from screens.yaml; null where it is not there */
	title: string | null;
	/** it has a name that screens.yaml does not know */
	unknown: boolean;
	/** never: in screens.yaml, and not seen since the server started or for a day */
	health: 'well' | 'late' | 'hung' | 'closed' | 'never';
	/** seconds since the last beat */
	age_s: number | null;
	reachable: boolean;
	restarting: boolean;
	/** how often it stood still since the server started */
	hangs: number;
	/** two pages beat under this name */
	twice: boolean;
	otherContent: boolean;
	otherVersion: boolean;
	beat: ScreenBeat | null;
}
