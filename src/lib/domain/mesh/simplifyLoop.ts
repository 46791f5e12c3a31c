import { keepCorners } from './keepCorners';

/**
 * Fewer points for a closed outline (x, y pairs) that never leaves the old one by more than `tolerance`, split at
 * its two farthest corners.
 */
export function simplifyLoop(points: Float64Array, tolerance: number): Float64Array {
	const n = points.length / 2;
	if (n < 4 || !(tolerance > 0)) return points;
	let far = 0;
	let most = -1;
	for (let i = 1; i < n; i++) {
		const d = (points[i * 2] - points[0]) ** 2 + (points[i * 2 + 1] - points[1]) ** 2;
		if (d > most) {
			most = d;
			far = i;
		}
	}
	const halves = [
		[0, far],
		[far, n],
	] as const;
	const keep = keepCorners(points, halves, tolerance);
	return points.filter((_, k) => keep[k >> 1] === 1);
}
