import { MOST_WORDS_IN_LABEL } from './proseFindings';
import { checkFields } from './checkFields';
import { placeOf } from './explainIssue';
import { fieldPath, valueAt } from './fieldPath';
import { finding, type Finding } from './finding';
import { readAddress } from './readAddress';
import type { YamlResult } from './readYaml';
import { bedSchema, exhibitSchema, groupSchema, roomSchema, type ExhibitInFile } from './schemas';
import { ROOMS, type Bed, type Group, type RoomId } from './exhibit';
import { isTimeZone, type Show } from './shown/isShown';
import { showFindings } from './shown/showFindings';
import { suggest } from './suggest';
import type { Reference } from './compileSpecimen';

/**
 * Twice the time that a slow reader (120 words a minute) takes over the longest label that is allowed: one second a word.
 * common practice, no source
 */
const LEAST_IDLE_s = MOST_WORDS_IN_LABEL.en;

export type CompiledExhibit = ExhibitInFile & {
	roomShows?: Partial<Record<RoomId, Show>>;
	/** where in the file's list those rooms stand */
	roomIndex?: Partial<Record<RoomId, number>>;
};

/** Checks exhibit.yaml; what nothing else rests on (a room, a further language, the contact, how the screen hangs) is left out when it is wrong. */
export function compileExhibit(yaml: YamlResult): { compiled: CompiledExhibit | null; findings: Finding[] } {
	const own = compileRooms(yaml);
	const raw = { ...(yaml.value as object), ...own.raw };
	const { value, findings } = checkFields(exhibitSchema, raw, yaml.places, [], (path) => {
		const [key, index, ...deeper] = path;
		if (deeper.length > 0) return false;
		if (['contact', 'public_address', 'time_zone'].includes(String(key))) return index === undefined;
		if (key === 'screen') return index === 'bottom_edge_mm';
		if (key === 'rooms' || key === 'specimens_first') return typeof index === 'number';
		return key === 'languages' && typeof index === 'number' && index > 0;
	});
	for (const [list, key] of [
		['languages', 'code'],
		['rooms', null],
		['specimens_first', null],
	] as const) {
		const items = valueAt(raw, [list]);
		const first = new Map<unknown, number>();
		(Array.isArray(items) ? items : []).forEach((item, i) => {
			const path = key === null ? [list, i] : [list, i, key];
			const found = valueAt(raw, path);
			const place = placeOf(yaml.places, path);
			const line = first.get(found);
			if (typeof found !== 'string' || (list === 'rooms' && own.nameless.has(i))) return;
			if (line === undefined) first.set(found, place.line);
			else findings.push(finding('duplicate-id', place, fieldPath(path), { found, firstLine: line }));
		});
	}
	findings.push(...own.findings);
	if (!value) return { compiled: null, findings };
	const { timeZone: zone } = value;
	if (zone !== undefined && !isTimeZone(zone)) {
		const data = { found: zone, meant: suggest(zone, Intl.supportedValuesOf('timeZone')) };
		findings.push(finding('unknown-time-zone', placeOf(yaml.places, ['time_zone']), 'time_zone', data));
	}
	if (value.idle.warnAfter_s < LEAST_IDLE_s) {
		const path = ['idle', 'warn_after_s'];
		findings.push(
			finding('idle-too-short', placeOf(yaml.places, path), fieldPath(path), {
				found: value.idle.warnAfter_s,
				least: LEAST_IDLE_s,
			}),
		);
	}
	if (value.idle.resetAfterWarning_s < 20) {
		const path = ['idle', 'reset_after_warning_s'];
		findings.push(
			finding('warning-too-short', placeOf(yaml.places, path), fieldPath(path), {
				found: value.idle.resetAfterWarning_s,
			}),
		);
	}
	const { publicAddress: written, timeZone, ...rest } = value;
	const address = written === undefined ? null : readAddress(written);
	if (address && !address.ok) {
		const place = placeOf(yaml.places, ['public_address']);
		findings.push(finding('bad-address', place, 'public_address', { found: written!, why: address.problem }));
	}
	const languages = value.languages.filter(
		({ code }, i) => value.languages.findIndex((other) => other.code === code) === i,
	);
	const compiled = {
		...rest,
		...(address?.ok ? { publicAddress: address.value } : {}),
		...(timeZone !== undefined && isTimeZone(timeZone) ? { timeZone } : {}),
		...(Object.keys(own.shows).length > 0 ? { roomShows: own.shows, roomIndex: own.index } : {}),
		languages,
		rooms: [...new Set(value.rooms.filter((_, i) => !own.nameless.has(i)))],
	};
	return { compiled, findings };
}

/**
 * The rooms as plain names, and the days of those that have some. A room whose days cannot be read is shown: a slip of the
 * fingers closes no room.
 */
function compileRooms({ value, places }: YamlResult): {
	raw: { rooms?: unknown };
	shows: Partial<Record<RoomId, Show>>;
	/** where in the list each of those rooms stands */
	index: Partial<Record<RoomId, number>>;
	/** entries without a name, told of already */
	nameless: ReadonlySet<number>;
	findings: Finding[];
} {
	const rooms = valueAt(value, ['rooms']);
	const shows: Partial<Record<RoomId, Show>> = {};
	const index: Partial<Record<RoomId, number>> = {};
	const nameless = new Set<number>();
	const findings: Finding[] = [];
	if (!Array.isArray(rooms)) return { raw: {}, shows, index, nameless, findings };
	const names = rooms.map((entry: unknown, i) => {
		if (typeof entry !== 'object' || entry === null || Array.isArray(entry)) return entry;
		const at = ['rooms', i];
		const checked = checkFields(roomSchema, entry, places, at);
		const written = valueAt(entry, ['room']);
		const name = written ?? checked.value?.room;
		if (name === undefined) nameless.add(i);
		// a wrong name is told of with the other names
		const own = checked.findings.filter(
			({ path }) => written === undefined || path !== fieldPath([...at, 'room']),
		);
		own.push(...showFindings(value, places, [...at, 'show']));
		findings.push(...own);
		const { room, show } = checked.value ?? {};
		if (room && show && own.length === 0) {
			shows[room] ??= show;
			index[room] ??= i;
		}
		return name ?? ROOMS[0];
	});
	return { raw: { rooms: names }, shows, index, nameless, findings };
}

export type CompiledBed = Omit<Bed, 'id' | 'text'>;

/** Checks one bed's facts. */
export function compileBed(yaml: YamlResult): { compiled: CompiledBed | null; findings: Finding[] } {
	const { value, findings } = checkFields(bedSchema, yaml.value, yaml.places);
	if (value && value.youngest_Ma > value.oldest_Ma) {
		findings.push(
			finding('ages-swapped', placeOf(yaml.places, ['youngest_ma']), 'youngest_ma', {
				oldest: value.oldest_Ma,
				youngest: value.youngest_Ma,
			}),
		);
	}
	return { compiled: findings.length === 0 ? (value ?? null) : null, findings };
}

export interface CompiledGroup {
	facts?: Omit<Group, 'id' | 'text'>;
	sources: Reference[];
	/** as written, whether or not the rest of the file is right */
	lengthSource?: Reference;
}

/** Checks one group's facts. */
export function compileGroup(yaml: YamlResult): { compiled: CompiledGroup; findings: Finding[] } {
	const { value, findings } = checkFields(groupSchema, yaml.value, yaml.places);
	const listed = valueAt(yaml.value, ['sources']);
	const sources = (Array.isArray(listed) ? listed : []).flatMap((id, i) =>
		typeof id === 'string' ? { id, path: ['sources', i] } : [],
	);
	const source = valueAt(yaml.value, ['length_m', 'source']);
	const lengthSource = typeof source === 'string' ? { id: source, path: ['length_m', 'source'] } : undefined;
	if (value?.length_m) {
		const { typical, largest } = value.length_m;
		const place = placeOf(yaml.places, ['length_m'], 'key');
		if (typical === undefined && largest === undefined) {
			findings.push(finding('length-empty', place, 'length_m', null));
		} else if (typical !== undefined && largest !== undefined && typical > largest) {
			findings.push(finding('lengths-swapped', place, 'length_m', { typical, largest }));
		}
	}
	return { compiled: { facts: findings.length === 0 ? value : undefined, sources, lengthSource }, findings };
}
