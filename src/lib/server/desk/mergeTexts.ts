import { merge } from 'node-diff3';

/**
 * Both sets of changes in one text, line by line; null where they touch the same or neighbouring lines in different ways.
 * Line ends count as part of a line.
 */
export function mergeTexts(ours: string, started: string, theirs: string): string | null {
	const lines = (text: string): string[] => text.split(/(?<=\n)/);
	const { conflict, result } = merge(lines(ours), lines(started), lines(theirs), {
		excludeFalseConflicts: true,
	});
	return conflict ? null : result.join('');
}
