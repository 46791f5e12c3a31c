import { keepCorners } from './keepCorners';

/** Fewer points for an open line (x, y pairs) that never leaves the old one by more than `tolerance`. Both ends stay. */
export function simplifyLine(points: readonly number[], tolerance: number): number[] {
	const n = points.length / 2;
	if (n < 3) return [...points];
	const keep = keepCorners(points, [[0, n - 1]], tolerance);
	return points.filter((_, k) => keep[k >> 1] === 1);
}
