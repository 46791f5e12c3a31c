import { isMap, isScalar, isSeq, parseDocument, type Pair, type YAMLMap } from 'yaml';
import { readYaml } from '../../content/readYaml';
import { fail, ok, type Result } from '../../domain/result';
import { canonicalJson } from '../canonicalJson';
import { yamlSplice, type YamlSplice } from '../yamlSplice';
import type { CellValue } from '../../content/tableImport';
import { yamlScalar } from './yamlScalar';

export interface FieldEdit {
	/** one key, or two or three for a key inside a map */
	path: readonly string[];
	/** null takes it away */
	value: CellValue;
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
	const document = parseDocument(body, { uniqueKeys: false, logLevel: 'error' });
	const top = document.contents;
	if (!isMap(top) || top.items.length === 0 || before === undefined || document.errors.length > 0)
		return fail({ code: 'not-editable' });
	const splice = yamlSplice(body);
	const nested = new Map<string, FieldEdit[]>();
	const done: boolean[] = [];
	for (const edit of edits) {
		if (edit.path.length === 1) done.push(editIn(splice, top, edit.path[0], edit.value, order));
		else {
			const parent = edit.path.slice(0, -1).join('\n');
			nested.set(parent, [...(nested.get(parent) ?? []), edit]);
		}
	}
	for (const [parent, some] of nested) done.push(editParent(splice, top, parent.split('\n'), some, order));
	if (done.some((one) => !one)) return fail({ code: 'not-editable' });
	const made = splice.result();
	const wanted = withEdits(before, edits);
	const after = readYaml(made).value;
	return after !== undefined && canonicalJson(after) === canonicalJson(wanted)
		? ok(mark + made)
		: fail({ code: 'not-editable' });
}

const pairOf = (map: YAMLMap, key: string): Pair | undefined =>
	map.items.find((pair) => isScalar(pair.key) && pair.key.value === key);

function editParent(
	splice: YamlSplice,
	top: YAMLMap,
	path: readonly string[],
	edits: readonly FieldEdit[],
	order: readonly string[],
): boolean {
	const pair = path.reduce<Pair | undefined>((at, step, i) => {
		const map = i === 0 ? top : at?.value;
		return isMap(map) ? pairOf(map, step) : undefined;
	}, undefined);
	const set = edits.filter(({ value }) => value !== null);
	const key = (edit: FieldEdit): string => edit.path[edit.path.length - 1];
	const flow = (): string =>
		`{ ${set.map((edit) => `${key(edit)}: ${yamlScalar(edit.value as string)}`).join(', ')} }`;
	const map = pair?.value;
	if (!isMap(map) || map.items.length === 0) {
		if (set.length === 0) return true;
		if (path.length > 1) return false;
		return writeValue(splice, top, pair, path[0], flow(), order);
	}
	const left = map.items.filter(
		({ key: one }) => !edits.some((edit) => edit.value === null && isScalar(one) && one.value === key(edit)),
	);
	if (left.length === 0) {
		if (path.length > 1) return false;
		if (set.length === 0) splice.removePair(top, path[0]);
		else splice.replaceAll(pair!, ` ${flow()}`);
		return true;
	}
	return edits.every((edit) => editIn(splice, map, key(edit), edit.value, []));
}

function editIn(
	splice: YamlSplice,
	map: YAMLMap,
	key: string,
	value: CellValue,
	order: readonly string[],
): boolean {
	const pair = pairOf(map, key);
	if (value === null) {
		if (pair) splice.removePair(map, key);
		return true;
	}
	if (pair && isSeq(pair.value) && Array.isArray(value)) {
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
	if (!anchor || map.flow) splice.addPair(map, key, written);
	else splice.addLinesAfter(anchor, splice.indentOf(map), [`${key}: ${written}`]);
	return true;
}

/** What the file shall say: the same as before but for the edits. */
function withEdits(before: unknown, edits: readonly FieldEdit[]): unknown {
	const wanted = JSON.parse(canonicalJson(before)) as Record<string, unknown>;
	for (const { path, value } of edits) {
		let at = wanted;
		for (const step of path.slice(0, -1)) {
			if (typeof at[step] !== 'object' || at[step] === null) {
				if (value === null) break;
				at[step] = {};
			}
			at = at[step] as Record<string, unknown>;
		}
		const key = path[path.length - 1];
		if (value === null) delete at[key];
		else at[key] = value;
	}
	for (const parent of new Set(edits.filter(({ path }) => path.length === 2).map(({ path }) => path[0]))) {
		const held = wanted[parent];
		if (typeof held === 'object' && held !== null && Object.keys(held).length === 0) delete wanted[parent];
	}
	return wanted;
}
