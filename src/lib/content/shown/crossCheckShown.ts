import { report, type ContentFiles } from '../contentFiles';
import type { SpecimenDraft } from '../draft';
import type { RoomId } from '../exhibit';
import { placeOf } from '../explainIssue';
import { fieldPath } from '../fieldPath';
import { factsPath } from '../fileKind';
import { suggest } from '../suggest';
import { dayIn, isShown, type Show } from './isShown';

interface Settings {
	rooms: readonly RoomId[];
	roomShows?: Partial<Record<RoomId, Show>>;
	roomIndex?: Partial<Record<RoomId, number>>;
	specimensFirst?: readonly string[];
	timeZone?: string;
}

/**
 * What is shown when, held against the day that it is, and the specimens in the order that exhibit.yaml asks for: those of
 * `specimens_first`, then the others as they come.
 */
export function crossCheckShown(
	files: ContentFiles,
	{ rooms, roomShows = {}, roomIndex = {}, specimensFirst = [], timeZone }: Settings,
	specimens: readonly SpecimenDraft[],
	now: number,
): SpecimenDraft[] {
	const today = dayIn(timeZone, now);
	const tell = (file: string, path: readonly (string | number)[], show: Show | undefined): void => {
		const until = show?.until;
		const places = files.byPath.get(file)?.compiled?.places;
		if (until === undefined || until >= today || !places) return;
		const at = [...path, 'until'];
		report(files, file, 'show-is-over', placeOf(places, at), fieldPath(at), { until });
	};
	for (const { id, show } of specimens) tell(factsPath('specimen', id), ['show'], show);
	const places = files.byPath.get('exhibit.yaml')?.compiled?.places ?? new Map();
	for (const room of rooms) {
		const at = ['rooms', roomIndex[room] ?? 0, 'show'];
		tell('exhibit.yaml', at, roomShows[room]);
	}
	if (rooms.length > 0 && !rooms.some((room) => isShown(roomShows[room], today))) {
		report(files, 'exhibit.yaml', 'no-room-shown', placeOf(places, ['rooms'], 'key'), 'rooms', null);
	}

	const ids = new Set(
		[...files.byPath.values()].flatMap(({ kind }) => (kind.kind === 'specimen' ? kind.id : [])),
	);
	specimensFirst.forEach((id, i) => {
		if (ids.has(id)) return;
		const at = ['specimens_first', i];
		const data = { found: id, meant: suggest(id, [...ids]) };
		report(files, 'exhibit.yaml', 'first-not-there', placeOf(places, at), fieldPath(at), data);
	});
	const rank = (id: string): number => {
		const at = specimensFirst.indexOf(id);
		return at < 0 ? specimensFirst.length : at;
	};
	return [...specimens].sort((a, b) => rank(a.id) - rank(b.id));
}
