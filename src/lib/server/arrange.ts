import { isScalar, parseDocument, type YAMLMap } from 'yaml';
import { z } from 'zod';
import type { ArrangeRequest, OpenRoom } from '../content/arrangement';
import { ROOMS } from '../content/exhibit';
import { readYaml } from '../content/readYaml';
import { ID_PATTERN } from '../content/schemas';
import { fail, ok, type Result } from '../domain/result';
import { canonicalJson } from './canonicalJson';
import { moveRoom, moveSpecimen } from './desk/moveListed';
import { yamlSplice } from './yamlSplice';

type Edited = Result<string, { code: 'not-editable' | 'not-there' }>;

/** The text of exhibit.yaml with the rooms and the specimens as they are wanted. */
export function arrange({ file, rooms, specimens }: ArrangeRequest): Edited {
	if (file.exact === null) return fail({ code: 'not-editable' });
	const arranged = rooms ? setRooms(file.exact, rooms) : ok(file.exact);
	if (!arranged.ok || !specimens?.length) return arranged;
	// the whole order is given, so the first stays first
	return moveSpecimen(arranged.value, specimens, specimens[0], 0);
}

/** The rooms of exhibit.yaml as they stand in the file, with their days. */
export function readRooms(exact: string): OpenRoom[] {
	const value = readYaml(exact.replace(/^\uFEFF/, '')).value as { rooms?: unknown } | undefined | null;
	if (!Array.isArray(value?.rooms)) return [];
	return value.rooms.flatMap((entry: unknown): OpenRoom[] => {
		if (typeof entry === 'string') return [{ room: entry, from: '', until: '' }];
		const { room, show } = (entry ?? {}) as {
			room?: unknown;
			show?: { from?: unknown; until?: unknown } | null;
		};
		if (typeof room !== 'string') return [];
		const day = (found: unknown): string => (typeof found === 'string' ? found : '');
		return [{ room, from: day(show?.from), until: day(show?.until) }];
	});
}

/** Only another order keeps each room's own line; what opens, closes or gets days writes the list anew. */
function setRooms(exact: string, wanted: readonly OpenRoom[]): Edited {
	const now = readRooms(exact);
	const same = (a: readonly OpenRoom[], b: readonly OpenRoom[]) => canonicalJson(a) === canonicalJson(b);
	if (same(now, wanted)) return ok(exact);
	const byName = (list: readonly OpenRoom[]) => [...list].sort((a, b) => (a.room < b.room ? -1 : 1));
	if (!same(byName(now), byName(wanted))) return writeRooms(exact, wanted);
	let text = exact;
	for (const [to, { room }] of wanted.entries()) {
		const moved = moveRoom(text, room, to);
		if (!moved.ok) return moved;
		text = moved.value;
	}
	return ok(text);
}

function writeRooms(exact: string, wanted: readonly OpenRoom[]): Edited {
	const mark = exact.startsWith('\uFEFF') ? '\uFEFF' : '';
	const body = exact.slice(mark.length);
	const before = readYaml(body).value;
	const document = parseDocument(body, { uniqueKeys: false, logLevel: 'error' });
	const top = document.contents as YAMLMap;
	const pair = top?.items?.find(({ key }) => isScalar(key) && key.value === 'rooms');
	if (!pair || document.errors.length > 0) return fail({ code: 'not-editable' });
	const days = ({ from, until }: OpenRoom) => ({ ...(from && { from }), ...(until && { until }) });
	const entries = wanted.map((one) =>
		one.from || one.until ? { room: one.room, show: days(one) } : one.room,
	);
	const splice = yamlSplice(body);
	splice.replaceAll(pair, ` [${entries.map(written).join(', ')}]`);
	const made = splice.result();
	const after = readYaml(made).value;
	return after !== undefined &&
		canonicalJson(after) === canonicalJson({ ...(before as object), rooms: entries })
		? ok(mark + made)
		: fail({ code: 'not-editable' });
}

function written(entry: string | { room: string; show: Record<string, string> }): string {
	if (typeof entry === 'string') return entry;
	const days = Object.entries(entry.show).map(([name, day]) => `${name}: ${day}`);
	return `{ room: ${entry.room}, show: { ${days.join(', ')} } }`;
}

const day = z.string().regex(/^(\d{4}-\d{2}-\d{2})?$/);
const schema = z.strictObject({
	file: z.strictObject({
		path: z.literal('exhibit.yaml'),
		base: z.string().max(64).nullable(),
		exact: z.string().max(100_000).nullable(),
	}),
	rooms: z
		.array(z.strictObject({ room: z.enum(ROOMS), from: day, until: day }))
		.max(ROOMS.length)
		.optional(),
	specimens: z.array(z.string().regex(ID_PATTERN).max(100)).max(5_000).optional(),
});

/** What the page sends; null where it is anything else. */
export function parseArrange(body: unknown): ArrangeRequest | null {
	const parsed = schema.safeParse(body);
	return parsed.success ? parsed.data : null;
}
