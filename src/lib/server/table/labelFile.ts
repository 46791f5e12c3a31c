import { readYaml } from '../../content/readYaml';
import { fail, ok, type Result } from '../../domain/result';
import { editFields } from './editFields';
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
function takeApart(text: string): Parts | null {
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
	const parts = takeApart(text);
	if (!parts) return fail({ code: 'not-editable' });
	const keys = LABEL_KEYS.flatMap((key) => {
		const value = edits[key];
		return value === undefined ? [] : [{ path: [key], value }];
	});
	const top = keys.length === 0 ? ok(parts.top) : editFields(parts.top, keys, LABEL_KEYS);
	if (!top.ok) return top;
	let { body } = parts;
	let { close } = parts;
	if (edits.text !== undefined) {
		const eol = text.includes('\r\n') ? '\r\n' : '\n';
		const before = /^\s*/.exec(body)![0];
		const lead = before === body ? '' : before;
		const wanted = typeof edits.text === 'string' ? bodyOf(edits.text).replace(/\n/g, eol) : '';
		body = wanted === '' ? '' : `${lead}${wanted}${/\s*$/.exec(body)![0] || eol}`;
		if (!close.endsWith('\n')) close += eol;
	}
	return ok(parts.open + top.value + close + body);
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
