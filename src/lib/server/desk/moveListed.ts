import { isMap, isScalar, isSeq, parseDocument, type Node, type YAMLSeq } from 'yaml';
import { readYaml } from '../../content/readYaml';
import { valueAt } from '../../content/fieldPath';
import { fail, ok, type Result } from '../../domain/result';
import { canonicalJson } from '../canonicalJson';
import { editContent } from './editContent';

type Edited = Result<string, { code: 'not-editable' | 'not-there' }>;

/** Puts a room of exhibit.yaml (its exact text) at another place of the list, from 0; its days and its note go with it. */
export function moveRoom(exact: string, room: string, to: number): Edited {
	const mark = exact.startsWith('\uFEFF') ? '\uFEFF' : '';
	const text = exact.slice(mark.length);
	const before = readYaml(text).value;
	const rooms = valueAt(before, ['rooms']);
	if (!Array.isArray(rooms)) return fail({ code: 'not-editable' });
	const from = rooms.findIndex((entry) => entry === room || valueAt(entry, ['room']) === room);
	if (from < 0) return fail({ code: 'not-there' });
	const order = moved(
		rooms.map((_, i) => i),
		from,
		to,
	);
	const list = parseDocument(text, { uniqueKeys: false, logLevel: 'error' }).get('rooms', true) as unknown;
	if (!isSeq(list)) return fail({ code: 'not-editable' });
	const made = reordered(text, list, order);
	const wanted = { ...(before as object), rooms: order.map((i) => rooms[i] as unknown) };
	const after = readYaml(made).value;
	return after !== undefined && canonicalJson(after) === canonicalJson(wanted)
		? ok(mark + made)
		: fail({ code: 'not-editable' });
}

/**
 * Puts a specimen at another place, from 0, of the order in which `shown` has them now. exhibit.yaml then names under
 * `specimens_first` only as many as are needed; the others follow by name.
 */
export function moveSpecimen(exact: string, shown: readonly string[], id: string, to: number): Edited {
	const from = shown.indexOf(id);
	if (from < 0) return fail({ code: 'not-there' });
	const order = moved(shown, from, to);
	// the shortest beginning after which the others follow by name
	let first = order.length - 1;
	while (first > 0 && order[first - 1] < order[first]) first--;
	const named = order.slice(0, first);
	return editContent('exhibit.yaml', exact, {
		fields: { specimens_first: named.length === 0 ? null : named },
	});
}

function moved<T>(items: readonly T[], from: number, to: number): T[] {
	const rest = items.filter((_, i) => i !== from);
	const at = Math.max(0, Math.min(rest.length, Math.trunc(to)));
	return [...rest.slice(0, at), items[from], ...rest.slice(at)];
}

/** A list with its entries in another order: each takes the place, and in a block the note behind it, of another. */
function reordered(text: string, list: YAMLSeq, order: readonly number[]): string {
	const places = list.items.map((item) => {
		const [start, end] = (item as Node).range!;
		return list.flow ? ([start, end] as const) : ([start, lineEnd(text, lastSign(item as Node))] as const);
	});
	let made = '';
	let at = 0;
	places.forEach(([start, end], i) => {
		const [from, to] = places[order[i]];
		made += text.slice(at, start) + text.slice(from, to);
		at = end;
	});
	return made + text.slice(at);
}

function lastSign(node: Node): number {
	if (isMap(node) && !node.flow) {
		const last = node.items.at(-1);
		const value = last?.value as Node | null | undefined;
		if (value) return lastSign(value);
		return isScalar(last?.key) ? last.key.range![1] : node.range![1];
	}
	return node.range![1];
}

function lineEnd(text: string, from: number): number {
	const end = text.indexOf('\n', from);
	if (end < 0) return text.length;
	return text[end - 1] === '\r' ? end - 1 : end;
}
