export interface OverlapAreas {
	both: number;
	onlyA: number;
	onlyB: number;
}

/** A shape as closed loops of x, y pairs; a loop inside another is a hole (even-odd). */
export type Loops = readonly (readonly number[])[];

/**
 * Areas of what two shapes share and of what each has alone, by lines across both (midpoint rule: 2,000 lines give
 * four figures; a level edge between two lines costs at most the strip between them).
 */
export function overlapAreas(a: Loops, b: Loops, lines = 2000): OverlapAreas {
	const out: OverlapAreas = { both: 0, onlyA: 0, onlyB: 0 };
	let low = Infinity;
	let high = -Infinity;
	for (const loop of [...a, ...b]) {
		for (let i = 1; i < loop.length; i += 2) {
			low = Math.min(low, loop[i]);
			high = Math.max(high, loop[i]);
		}
	}
	if (!(high > low)) return out;
	const step = (high - low) / lines;
	const [rowsA, rowsB] = [a, b].map((loops) => crossings(loops, low, step, lines));
	for (let row = 0; row < lines; row++) {
		const [inA, inB] = [rowsA[row], rowsB[row]];
		const [lengthA, lengthB, shared] = [covered(inA), covered(inB), coveredByBoth(inA, inB)];
		out.both += shared * step;
		out.onlyA += (lengthA - shared) * step;
		out.onlyB += (lengthB - shared) * step;
	}
	return out;
}

/** Where each line enters and leaves the shape, rising; lines lie at low + (row + 1/2) step. */
function crossings(loops: Loops, low: number, step: number, lines: number): number[][] {
	const rows = Array.from({ length: lines }, (): number[] => []);
	for (const loop of loops) {
		for (let i = 0; i < loop.length; i += 2) {
			const j = (i + 2) % loop.length;
			const [x0, y0, x1, y1] = [loop[i], loop[i + 1], loop[j], loop[j + 1]];
			if (y0 === y1) continue;
			const [bottom, top] = y0 < y1 ? [y0, y1] : [y1, y0];
			const first = Math.max(0, Math.ceil((bottom - low) / step - 0.5));
			// half open, so that a line through a corner meets one of its two sides
			const last = Math.min(lines, Math.ceil((top - low) / step - 0.5));
			for (let row = first; row < last; row++) {
				const y = low + (row + 0.5) * step;
				rows[row].push(x0 + ((x1 - x0) * (y - y0)) / (y1 - y0));
			}
		}
	}
	for (const row of rows) row.sort((p, q) => p - q);
	return rows;
}

function covered(ends: readonly number[]): number {
	let sum = 0;
	for (let i = 0; i + 1 < ends.length; i += 2) sum += ends[i + 1] - ends[i];
	return sum;
}

function coveredByBoth(a: readonly number[], b: readonly number[]): number {
	let sum = 0;
	for (let i = 0; i + 1 < a.length; i += 2) {
		for (let j = 0; j + 1 < b.length; j += 2) {
			sum += Math.max(0, Math.min(a[i + 1], b[j + 1]) - Math.max(a[i], b[j]));
		}
	}
	return sum;
}
