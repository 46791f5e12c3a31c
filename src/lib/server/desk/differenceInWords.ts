import { diffArrays, diffLines, diffWordsWithSpace } from 'diff';
import type { Difference, LineChange, ParagraphChange, TextPart, ValueChange } from '../../content/deskFiles';
import { fieldPath } from '../../content/fieldPath';
import { readYaml } from '../../content/readYaml';
import { takeApart } from '../table/labelFile';
import { plainText } from './textStyle';

/** Changes of values that are told; a page holds no more. */
const MOST_CHANGES = 500;
/** Above so many words two paragraphs are told as taken out and put in. */
const MOST_WORDS = 2_000;

/**
 * How two texts of one file differ: values by field, paragraphs by word, lines. A file that was not there is null.
 * Nothing here is worded: the page says it in its language.
 */
export function differenceInWords(path: string, older: string | null, newer: string | null): Difference {
	const [before, after] = [older, newer].map((text) => (text === null ? '' : plainText(text)));
	const [old, now] = [before, after].map((text) => valuesOf(path, text));
	const values = old && now ? changedValues(old.values, now.values) : null;
	const paragraphs = old && now ? changedParagraphs(old.body, now.body) : [];
	return {
		values,
		paragraphs,
		onlyForm: values?.length === 0 && paragraphs.length === 0 && older !== newer,
		lines: changedLines(before, after),
	};
}

/** Values by field path, and what follows them; null where they cannot be read. */
function valuesOf(path: string, text: string): { values: Map<string, string>; body: string } | null {
	const values = new Map<string, string>();
	if (text.trim() === '') return { values, body: '' };
	const parts = path.endsWith('.md') ? takeApart(text) : { top: text, body: '' };
	// a read-me file has no values
	if (!parts) return { values, body: text };
	const { value } = readYaml(parts.top);
	if (value === undefined) return null;
	flatten(value, [], values);
	return { values, body: parts.body };
}

function flatten(value: unknown, path: readonly PropertyKey[], into: Map<string, string>): void {
	const name = fieldPath(path).replaceAll('.[', '[');
	if (Array.isArray(value)) {
		const simple = value.every((item) => typeof item !== 'object' || item === null);
		if (simple) return void into.set(name, value.map(written).join(', '));
		const ids = value.map((item) => (item as { id?: unknown } | null)?.id);
		const known = ids.every((id) => typeof id === 'string') && new Set(ids).size === ids.length;
		value.forEach((item, i) => flatten(item, [...path, known ? `[${String(ids[i])}]` : i], into));
	} else if (typeof value === 'object' && value !== null) {
		for (const [key, item] of Object.entries(value)) flatten(item, [...path, key], into);
	} else into.set(name, written(value));
}

const written = (value: unknown): string => (value === null ? '' : String(value).trim());

function changedValues(
	before: ReadonlyMap<string, string>,
	after: ReadonlyMap<string, string>,
): ValueChange[] {
	const changes: ValueChange[] = [];
	for (const path of new Set([...after.keys(), ...before.keys()])) {
		const [from, to] = [before.get(path), after.get(path)];
		if (from === to) continue;
		if (from === undefined) changes.push({ kind: 'added', path, to });
		else if (to === undefined) changes.push({ kind: 'removed', path, from });
		else changes.push({ kind: 'changed', path, from, to });
		if (changes.length === MOST_CHANGES) break;
	}
	return changes;
}

function changedParagraphs(before: string, after: string): ParagraphChange[] {
	const split = (body: string): string[] =>
		body
			.split(/\n\s*\n/)
			.map((text) => text.trim().replace(/\s+/g, ' '))
			.filter((text) => text !== '');
	const changes: ParagraphChange[] = [];
	let [oldNumber, newNumber] = [1, 1];
	const parts = diffArrays(split(before), split(after));
	for (let i = 0; i < parts.length; i++) {
		const { added, removed, value } = parts[i];
		if (!added && !removed) {
			oldNumber += value.length;
			newNumber += value.length;
			continue;
		}
		// what is taken out and what is put in beside it are told together, one against one
		const next = parts[i + 1];
		const gone = removed ? value : next?.removed ? next.value : [];
		const come = added ? value : next?.added ? next.value : [];
		if ((removed && next?.added) || (added && next?.removed)) i++;
		for (let n = 0; n < Math.max(gone.length, come.length); n++) {
			if (n >= come.length) changes.push(whole('removed', oldNumber + n, gone[n]));
			else if (n >= gone.length) changes.push(whole('added', newNumber + n, come[n]));
			else changes.push({ kind: 'changed', number: newNumber + n, parts: words(gone[n], come[n]) });
		}
		oldNumber += gone.length;
		newNumber += come.length;
	}
	return changes;
}

const whole = (kind: 'added' | 'removed', number: number, text: string): ParagraphChange => ({
	kind,
	number,
	parts: [{ kind, text }],
});

function words(before: string, after: string): TextPart[] {
	if (before.split(' ').length + after.split(' ').length > MOST_WORDS)
		return [
			{ kind: 'removed', text: before },
			{ kind: 'added', text: after },
		];
	return diffWordsWithSpace(before, after).map(({ value, added, removed }) => ({
		kind: added ? 'added' : removed ? 'removed' : 'same',
		text: value,
	}));
}

function changedLines(before: string, after: string): LineChange[] {
	let [oldLine, newLine] = [1, 1];
	return diffLines(before, after).flatMap(({ value, added, removed }) => {
		const lines = value.replace(/\n$/, '').split('\n');
		return lines.map((text): LineChange => ({
			kind: added ? 'added' : removed ? 'removed' : 'same',
			text,
			oldLine: added ? null : oldLine++,
			newLine: removed ? null : newLine++,
		}));
	});
}
