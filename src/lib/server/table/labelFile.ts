import { readYaml } from '../../content/readYaml';
import { fail, ok, type Result } from '../../domain/result';
import { editFields, type FieldEdit } from './editFields';
import type { CellValue } from '../../content/tableImport';
import { yamlScalar } from './yamlScalar';

export const LABEL_KEYS = ['title', 'short', 'alt'] as const;
export type LabelEdits = Partial<Record<(typeof LABEL_KEYS)[number] | 'text', CellValue>>;

interface Parts {
	/** up to the end of the first line of hyphens */
	open: string;
	top: string;
	/** the second line of hyphens, with the line end */
	close: string;
	body: string;
}

/** Takes a label file apart without losing a byte; null where it has no short lines. */
export function takeApart(text: string): Parts | null {
	const match = /^(\uFEFF?\s*?---[ \t]*\r?\n)([\s\S]*?)(?<=\n)(---[ \t]*(?:\r?\n|$))([\s\S]*)$/.exec(text);
	return match ? { open: match[1], top: match[2], close: match[3], body: match[4] } : null;
}

/** A label's text as a cell holds it: line ends alike, no empty lines round it. */
export const bodyOf = (text: string): string => text.replace(/\r\n?/g, '\n').trim();

/** What a label file says; null where it cannot be read. */
export function readLabel(text: string): Record<(typeof LABEL_KEYS)[number] | 'text', string> | null {
	const parts = takeApart(text);
	if (!parts) return null;
	const top = readYaml(parts.top).value;
	if (top === undefined || typeof top !== 'object' || Array.isArray(top)) return null;
	const value = (key: string): string => {
		const found = (top as Record<string, unknown> | null)?.[key];
		return typeof found === 'string' || typeof found === 'number' ? String(found).trim() : '';
	};
	return { title: value('title'), short: value('short'), alt: value('alt'), text: bodyOf(parts.body) };
}

/** Changes a label file; all that is not changed stays byte for byte. */
export function editLabel(text: string, edits: LabelEdits): Result<string, { code: 'not-editable' }> {
	const fields = LABEL_KEYS.flatMap((key) => {
		const value = edits[key];
		return value === undefined ? [] : [{ path: [key], value }];
	});
	const body = edits.text === undefined ? undefined : typeof edits.text === 'string' ? edits.text : '';
	return editMarkdown(text, fields, body, LABEL_KEYS);
}

/**
 * Changes short lines of a Markdown file, and the text below them where `body` is given; all that is not changed stays
 * byte for byte, and the body keeps the empty lines round it.
 */
export function editMarkdown(
	text: string,
	fields: readonly FieldEdit[],
	body: string | undefined,
	order: readonly string[] = [],
): Result<string, { code: 'not-editable' }> {
	const parts = takeApart(text);
	if (!parts) return fail({ code: 'not-editable' });
	const top = fields.length === 0 ? ok(parts.top) : editFields(parts.top, fields, order);
	if (!top.ok) return top;
	let [now, close] = [parts.body, parts.close];
	if (body !== undefined && bodyOf(body) !== bodyOf(now)) {
		const eol = text.includes('\r\n') ? '\r\n' : '\n';
		const before = /^\s*/.exec(now)![0];
		const lead = before === now ? '' : before;
		const wanted = bodyOf(body).replace(/\n/g, eol);
		now = wanted === '' ? '' : `${lead}${wanted}${/\s*$/.exec(now)![0] || eol}`;
		if (!close.endsWith('\n')) close += eol;
	}
	return ok(parts.open + top.value + close + now);
}

/** A new label file. */
export function newLabel(edits: LabelEdits): string {
	const lines = LABEL_KEYS.flatMap((key) => {
		const value = edits[key];
		return typeof value === 'string' ? [`${key}: ${yamlScalar(value)}`] : [];
	});
	const text = typeof edits.text === 'string' ? bodyOf(edits.text) : '';
	return `---\n${lines.join('\n')}\n---\n${text === '' ? '' : `${text}\n`}`;
}
