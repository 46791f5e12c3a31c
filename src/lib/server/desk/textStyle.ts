import { diffArrays } from 'diff';
import type { LineEnds } from '../../content/deskFiles';

const MARK = '\uFEFF';

/** A text as a field of a page holds it: lines end in LF, no byte order mark. */
export const plainText = (exact: string): string => exact.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');

export const hasMark = (exact: string): boolean => exact.startsWith(MARK);

export function lineEndsOf(exact: string): LineEnds {
	const both = (exact.match(/\r\n/g) ?? []).length;
	const all = (exact.match(/\r\n?|\n/g) ?? []).length;
	return both === 0 && !exact.includes('\r') ? '\n' : both === all ? '\r\n' : 'mixed';
}

/**
 * What was typed, with the byte order mark and the line ends of the file as it was: a line that stays keeps its own, a new
 * one takes what most lines have.
 */
export function inStyleOf(typed: string, exact: string | null): string {
	const text = plainText(typed);
	if (exact === null) return text;
	const mark = hasMark(exact) ? MARK : '';
	const eol = lineEndsOf(exact);
	if (eol !== 'mixed') return mark + (eol === '\n' ? text : text.replace(/\n/g, eol));
	const before = [...exact.slice(mark.length).matchAll(/([^\r\n]*)(\r\n?|\n|$)/g)].map(([, line, end]) => ({
		line,
		end,
	}));
	const count = (end: string) => before.filter((one) => one.end === end).length;
	const most = ['\n', '\r\n', '\r'].sort((a, b) => count(b) - count(a))[0];
	const lines = text.split('\n');
	const ends: string[] = [];
	let from = 0;
	for (const part of diffArrays(
		before.map(({ line }) => line),
		lines,
	)) {
		if (part.added) part.value.forEach(() => ends.push(most));
		else {
			if (!part.removed) part.value.forEach((_, i) => ends.push(before[from + i]?.end || most));
			from += part.value.length;
		}
	}
	return mark + lines.map((line, i) => (i === lines.length - 1 ? line : line + ends[i])).join('');
}
