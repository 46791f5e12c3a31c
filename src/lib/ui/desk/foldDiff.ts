import type { DiffPart } from './wordDiff';

/** Lines that are shown round each change. */
const AROUND = 2;

export type FoldedPart = DiffPart | { is: 'folded'; text: '' };

/** Leaves out what is alike and far from any change; short texts stay whole. */
export function foldDiff(parts: readonly DiffPart[]): FoldedPart[] {
	return parts.flatMap((part, i): FoldedPart[] => {
		if (part.is !== 'same') return [part];
		const lines = part.text.split(/(?<=\n)/);
		const head = i === 0 ? 0 : AROUND;
		const tail = i === parts.length - 1 ? 0 : AROUND;
		if (lines.length <= head + tail + 2) return [part];
		const around = (text: string): FoldedPart[] => (text ? [{ is: 'same', text }] : []);
		return [
			...around(lines.slice(0, head).join('')),
			{ is: 'folded', text: '' },
			...around(tail === 0 ? '' : lines.slice(-tail).join('')),
		];
	});
}
