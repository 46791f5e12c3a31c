import { report, type ContentFiles } from '../contentFiles';
import type { RoomId } from '../exhibit';
import { placeOf } from '../explainIssue';
import { fieldPath } from '../fieldPath';
import type { ScreenSettings } from './types';

export const SCREENS_FILE = 'screens.yaml';

/** The screens with what exhibit.yaml has for them: rooms and languages that it does not have are left out. */
export function crossCheckScreens(
	files: ContentFiles,
	rooms: readonly RoomId[],
	codes: readonly string[],
): ScreenSettings[] {
	const compiled = files.byPath.get(SCREENS_FILE)?.compiled;
	if (!compiled?.screens) return [];
	const place = (path: readonly PropertyKey[]) => placeOf(compiled.places, path);
	return [...compiled.screens.values()].map((screen) => {
		const { rooms: wanted, firstLanguage, ...rest } = screen;
		const shown = [...new Set(wanted ?? [])].filter((room) => rooms.includes(room));
		const path = (...steps: PropertyKey[]) => [screen.id, ...steps];
		if (wanted && shown.length === 0) {
			const at = path('rooms');
			report(files, SCREENS_FILE, 'screen-without-rooms', place(at), fieldPath(at), { rooms });
		} else {
			wanted?.forEach((room, i) => {
				if (rooms.includes(room)) return;
				const at = path('rooms', i);
				report(files, SCREENS_FILE, 'screen-room-not-shown', place(at), fieldPath(at), {
					found: room,
					rooms,
				});
			});
		}
		const known = firstLanguage !== undefined && codes.includes(firstLanguage);
		if (firstLanguage !== undefined && !known) {
			const at = path('first_language');
			report(files, SCREENS_FILE, 'screen-language-unknown', place(at), fieldPath(at), {
				found: firstLanguage,
				codes,
			});
		}
		return {
			...rest,
			...(shown.length > 0 && { rooms: shown }),
			...(known && { firstLanguage }),
		};
	});
}
