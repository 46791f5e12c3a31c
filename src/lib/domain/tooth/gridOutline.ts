import { GRID_ROWS, type GridTooth } from './sculptGrid';

/** A tooth seen straight from one side, and across; mm. */
export interface GridOutline {
	/** closed outline of the crown: up one side, over the tip, down the other; [across, up] */
	crown: [number, number][];
	/** closed outline of the root below it */
	root: [number, number][];
}

/** Ring of the crown nearest to a share of the way from tip (0) to base (1), by rows. */
export const rowAt = (share: number): number =>
	Math.min(GRID_ROWS - 1, Math.max(0, Math.round(share * GRID_ROWS) - 1));

/**
 * Outline of a grid tooth: from the lip side (`across` along x, distal to the right) or from behind (along z, labial to the right).
 * Exact where rings are level; on a bent crown a ring's ends stand for it.
 */
export function gridOutline(
	{ mesh, columns, ringStart }: GridTooth,
	seenFrom: 'lip' | 'behind',
): GridOutline {
	const axis = seenFrom === 'lip' ? 0 : 2;
	const p = mesh.positions;
	const rings = (p.length / 3 - 2) / columns;
	const left: [number, number][] = [];
	const right: [number, number][] = [];
	for (let row = 0; row < rings; row++) {
		const start = ringStart(row);
		let [low, high] = [start, start];
		for (let v = start; v < start + columns; v++) {
			if (p[3 * v + axis] < p[3 * low + axis]) low = v;
			if (p[3 * v + axis] > p[3 * high + axis]) high = v;
		}
		left.push([p[3 * low + axis], p[3 * low + 1]]);
		right.push([p[3 * high + axis], p[3 * high + 1]]);
	}
	const ring = (from: number, to: number, end: [number, number], atEnd: boolean): [number, number][] => {
		const up = left.slice(from, to);
		const down = right.slice(from, to);
		return atEnd ? [...down, end, ...up.reverse()] : [...up.reverse(), end, ...down];
	};
	const last = p.length / 3 - 1;
	return {
		crown: ring(0, GRID_ROWS, [p[axis], p[1]], false),
		root: ring(GRID_ROWS, rings, [p[3 * last + axis], p[3 * last + 1]], true),
	};
}

/** Outline of one ring of the crown seen from the tip: [distal, labial], mm, closed. */
export function gridSection({ mesh, columns, ringStart }: GridTooth, row: number): [number, number][] {
	const start = ringStart(row);
	return Array.from({ length: columns }, (_, j) => {
		const v = 3 * (start + j);
		return [mesh.positions[v], mesh.positions[v + 2]];
	});
}
