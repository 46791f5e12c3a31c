import {
	isMap,
	isScalar,
	isSeq,
	parseDocument,
	type Node,
	type Pair,
	type YAMLMap,
	type YAMLSeq,
} from 'yaml';
import type { FieldValue } from '../../content/deskFiles';
import { valueAt, type FieldPath } from '../../content/fieldPath';
import { readYaml } from '../../content/readYaml';
import { fail, ok, type Result } from '../../domain/result';
import { canonicalJson } from '../canonicalJson';
import { yamlSplice, type YamlSplice } from '../yamlSplice';
import { yamlKey, yamlScalar } from './yamlScalar';

export interface FieldEdit {
	/** keys, and numbers for entries of a list; maps that are missing on the way are made */
	path: FieldPath;
	/** null takes it away, and a map that holds nothing more with it */
	value: FieldValue;
}

/**
 * Changes values in a YAML text. Comments, the order of lines, line ends and everything that does not change stay
 * byte for byte. A key that was not there is put behind the one that comes before it in `order`, or last. The new
 * text has been read again: it says what was asked for, and nothing else in it has changed.
 */
export function editFields(
	text: string,
	edits: readonly FieldEdit[],
	order: readonly string[] = [],
): Result<string, { code: 'not-editable' }> {
	const mark = text.startsWith('\uFEFF') ? '\uFEFF' : '';
	const body = text.slice(mark.length);
	const before = readYaml(body).value;
	if (before === undefined || edits.some(({ path }) => path.length === 0 || path.includes('__proto__')))
		return fail({ code: 'not-editable' });
	const fresh = edits.filter(({ path, value }) => !isSame(valueAt(before, path), value));
	if (fresh.length === 0) return ok(text);
	const document = parseDocument(body, { uniqueKeys: false, logLevel: 'error' });
	if (document.errors.length > 0) return fail({ code: 'not-editable' });
	const top = document.contents;
	if (top === null) return startFile(mark, body, fresh);
	if (!isMap(top) || top.items.length === 0) return fail({ code: 'not-editable' });
	const splice = yamlSplice(body);
	const groups = new Map<string, FieldEdit[]>();
	for (const edit of fresh) {
		const parent = JSON.stringify(edit.path.slice(0, -1));
		groups.set(parent, [...(groups.get(parent) ?? []), edit]);
	}
	for (const [parent, some] of groups) {
		if (!editParent(splice, top, JSON.parse(parent) as FieldPath, some, order))
			return fail({ code: 'not-editable' });
	}
	const made = splice.result();
	const wanted = withEdits(before, fresh);
	const after = readYaml(made).value;
	return after !== undefined && canonicalJson(after) === canonicalJson(wanted)
		? ok(mark + made)
		: fail({ code: 'not-editable' });
}

const isSame = (now: unknown, value: FieldValue): boolean =>
	now === undefined ? value === null : value !== null && canonicalJson(now) === canonicalJson(value);

/** Lines of a file that holds nothing but notes. */
function startFile(
	mark: string,
	body: string,
	edits: readonly FieldEdit[],
): Result<string, { code: 'not-editable' }> {
	if (edits.some(({ path, value }) => path.length !== 1 || value === null))
		return fail({ code: 'not-editable' });
	const eol = body.includes('\r\n') ? '\r\n' : '\n';
	const lines = edits.map(({ path, value }) => `${yamlKey(String(path[0]))}: ${yamlScalar(value!)}${eol}`);
	return ok(mark + (body === '' || body.endsWith('\n') ? body : body + eol) + lines.join(''));
}

const pairOf = (map: YAMLMap, key: string): Pair | undefined =>
	map.items.find(({ key: one }) => isScalar(one) && (one.value === key || one.source === key));

/** What stands under a step of a path. */
function under(node: unknown, step: string | number): unknown {
	if (isMap(node)) return pairOf(node, String(step))?.value;
	return isSeq(node) && typeof step === 'number' ? node.items[step] : undefined;
}

const isFull = (node: unknown): node is YAMLMap | YAMLSeq =>
	(isMap(node) || isSeq(node)) && node.items.length > 0;

function editParent(
	splice: YamlSplice,
	top: YAMLMap,
	path: FieldPath,
	edits: readonly FieldEdit[],
	order: readonly string[],
): boolean {
	const nodes: unknown[] = [top];
	for (const step of path) nodes.push(under(nodes[nodes.length - 1], step));
	const parent = nodes[path.length];
	const set = edits.filter(({ value }) => value !== null);
	const key = (edit: FieldEdit): string => String(edit.path[edit.path.length - 1]);
	const flow = (): string =>
		`{ ${set.map((edit) => `${yamlKey(key(edit))}: ${yamlScalar(edit.value!)}`).join(', ')} }`;
	if (!isFull(parent)) {
		if (set.length === 0) return true;
		// the deepest map that is there takes the ones that are missing
		const depth = nodes.findLastIndex(isFull);
		const holder = nodes[depth];
		const missing = path.slice(depth);
		if (!isMap(holder) || missing.some((step) => typeof step === 'number')) return false;
		const [first, ...deeper] = missing.map(String);
		const written = deeper.reduceRight((inner, step) => `{ ${yamlKey(step)}: ${inner} }`, flow());
		return writeValue(splice, holder, pairOf(holder, first), first, written, depth === 0 ? order : []);
	}
	if (isSeq(parent)) return editItems(splice, parent, edits);
	const left = parent.items.filter(
		({ key: one }) => !edits.some((edit) => edit.value === null && isScalar(one) && one.value === key(edit)),
	);
	if (left.length === 0) {
		const holder = nodes[path.length - 1];
		if (!isMap(holder)) return false;
		const own = String(path[path.length - 1]);
		if (set.length > 0) splice.replaceAll(pairOf(holder, own)!, ` ${flow()}`);
		else if (holder.items.length > 1) splice.removePair(holder, own);
		else return false;
		return true;
	}
	return edits.every((edit) => editIn(splice, parent, key(edit), edit.value, path.length === 0 ? order : []));
}

/** Changes or takes out entries of a list. */
function editItems(splice: YamlSplice, list: YAMLSeq, edits: readonly FieldEdit[]): boolean {
	const at = ({ path }: FieldEdit): number => Number(path[path.length - 1]);
	const gone = new Set(edits.filter(({ value }) => value === null).map(at));
	if (gone.size === list.items.length || edits.some((edit) => !list.items[at(edit)])) return false;
	if (gone.size > 0) splice.keepItems(list, (i) => !gone.has(i));
	for (const edit of edits) {
		if (edit.value !== null) splice.replace(list.items[at(edit)] as Node, yamlScalar(edit.value));
	}
	return true;
}

function editIn(
	splice: YamlSplice,
	map: YAMLMap,
	key: string,
	value: FieldValue,
	order: readonly string[],
): boolean {
	const pair = pairOf(map, key);
	if (value === null) {
		if (pair) splice.removePair(map, key);
		return true;
	}
	if (pair && isSeq(pair.value) && pair.value.items.length > 0 && Array.isArray(value)) {
		const old = pair.value;
		const known = old.items.map((item) => (isScalar(item) ? item.value : null));
		const kept = known.filter((one) => value.includes(one as string));
		const added = value.slice(kept.length);
		// only taken out, or put behind what stays: then the lines that stay are left alone
		if (
			kept.length > 0 &&
			kept.every((one, i) => value[i] === one) &&
			kept.length + added.length === value.length
		) {
			splice.keepItems(old, (i) => value.includes(known[i] as string));
			const last = known.findLastIndex((one) => value.includes(one as string));
			for (const one of added) splice.addItem(old, last, yamlScalar(one));
			return true;
		}
	}
	return writeValue(splice, map, pair, key, yamlScalar(value), order);
}

function writeValue(
	splice: YamlSplice,
	map: YAMLMap,
	pair: Pair | undefined,
	key: string,
	written: string,
	order: readonly string[],
): boolean {
	if (pair) {
		const { value } = pair;
		const isBlock = isScalar(value) && (value.type === 'BLOCK_FOLDED' || value.type === 'BLOCK_LITERAL');
		if (isBlock) splice.replaceAll(pair, ` ${written}${splice.eol}`);
		else if (isScalar(value) && value.range) splice.replace(value, written);
		else splice.replaceAll(pair, ` ${written}`);
		return true;
	}
	const before = order.slice(0, Math.max(0, order.indexOf(key))).reverse();
	const anchor = before.map((one) => pairOf(map, one)).find((one) => one !== undefined);
	if (!anchor || map.flow) splice.addPair(map, yamlKey(key), written);
	else splice.addLinesAfter(anchor, splice.indentOf(map), [`${yamlKey(key)}: ${written}`]);
	return true;
}

/** What the file shall say: the same as before but for the edits. */
function withEdits(before: unknown, edits: readonly FieldEdit[]): unknown {
	const wanted = JSON.parse(canonicalJson(before)) as Holder;
	const lists = new Set<unknown[]>();
	for (const { path, value } of edits) {
		let at = wanted;
		for (const step of path.slice(0, -1)) {
			if (typeof at[step] !== 'object' || at[step] === null) {
				if (value === null) break;
				at[step] = {};
			}
			at = at[step] as Holder;
		}
		const key = path[path.length - 1];
		if (value !== null) at[key] = value;
		else if (Array.isArray(at)) {
			// taken out at the end, so that the others keep their numbers
			at[Number(key)] = GONE;
			lists.add(at);
		} else delete at[key];
	}
	for (const list of lists) list.splice(0, list.length, ...list.filter((item) => item !== GONE));
	for (const { path, value } of edits) {
		if (value !== null || path.length < 2) continue;
		const own = valueAt(wanted, path.slice(0, -1));
		const holder = valueAt(wanted, path.slice(0, -2)) as Holder;
		const isEmpty =
			typeof own === 'object' && own !== null && !Array.isArray(own) && Object.keys(own).length === 0;
		if (isEmpty && !Array.isArray(holder)) delete holder[path[path.length - 2]];
	}
	return wanted;
}

type Holder = Record<string | number, unknown>;
const GONE = Symbol('gone');
