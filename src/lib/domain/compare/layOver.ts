import { clipLoop } from '../mesh/clipLoop';
import type { DrawnView } from '../mesh/lineDrawing';
import { overlapAreas, type OverlapAreas } from '../mesh/overlapAreas';

/** What is laid over the other: a tooth seen from one side, in mm from the middle of its crown's base. */
export interface LaidTooth {
	view: DrawnView;
	/** of the apex above the plane of the base */
	axialHeight_mm: number;
	/** turned round left and right, as a tooth of the other side of the jaw is */
	mirrored?: boolean;
}

/** true: one mm is one mm. equal: both crowns are 1 high. */
export type LaidScale = 'true' | 'equal';

export interface LaidOver {
	/** outlines of both crowns, closed, x, y pairs; mm at true scale, crown heights at equal scale */
	a: number[][];
	b: number[][];
	min: readonly [number, number];
	max: readonly [number, number];
	areas: OverlapAreas;
	/** what they share over what they cover together, 0 .. 1 */
	share: number;
}

/**
 * Lays the outline of one crown over that of another: bases on one line, middles of the bases on one point, axes
 * upright. What lies below the base is left out, so that a root does not count as difference. Null where a
 * view has no outline above its base.
 */
export function layOver(a: LaidTooth, b: LaidTooth, scale: LaidScale): LaidOver | null {
	const [outlineA, outlineB] = [crownOutline(a, scale), crownOutline(b, scale)];
	if (outlineA.length === 0 || outlineB.length === 0) return null;
	const areas = overlapAreas(outlineA, outlineB);
	const min: [number, number] = [Infinity, Infinity];
	const max: [number, number] = [-Infinity, -Infinity];
	for (const loop of [...outlineA, ...outlineB]) {
		loop.forEach((value, i) => {
			min[i % 2] = Math.min(min[i % 2], value);
			max[i % 2] = Math.max(max[i % 2], value);
		});
	}
	const share = areas.both / (areas.both + areas.onlyA + areas.onlyB);
	return { a: outlineA, b: outlineB, min, max, areas, share };
}

function crownOutline({ view, axialHeight_mm, mirrored }: LaidTooth, scale: LaidScale): number[][] {
	const by = scale === 'equal' ? 1 / axialHeight_mm : 1;
	const [sx, sy] = [mirrored ? -by : by, by];
	return view.lines
		.filter(({ kind, closed }) => kind === 'outline' && closed)
		.map(({ points }) => clipLoop(points, 0).map((value, i) => value * (i % 2 ? sy : sx)))
		.filter((loop) => loop.length > 0);
}
