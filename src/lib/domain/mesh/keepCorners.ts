/**
 * Which points of a line (x, y pairs) to keep, so that the line through them never leaves the old one by more than
 * `tolerance` (Douglas & Peucker 1973, doi:10.3138/FM57-6770-U75U-7727). Between the ends of each span, which stay;
 * an end may be the number of points, meaning the first one again. One byte a point, 1 = kept.
 */
export function keepCorners(
	points: ArrayLike<number>,
	spans: readonly (readonly [from: number, to: number])[],
	tolerance: number,
): Uint8Array {
	const n = points.length / 2;
	const keep = new Uint8Array(n);
	const open = [...spans];
	for (const [from, to] of open) {
		keep[from] = 1;
		keep[to % n] = 1;
	}
	for (let span = open.pop(); span; span = open.pop()) {
		const [from, to] = span;
		const ax = points[from * 2];
		const ay = points[from * 2 + 1];
		const dx = points[(to % n) * 2] - ax;
		const dy = points[(to % n) * 2 + 1] - ay;
		const length = Math.hypot(dx, dy);
		let worst = tolerance;
		let at = -1;
		for (let i = from + 1; i < to; i++) {
			const px = points[i * 2] - ax;
			const py = points[i * 2 + 1] - ay;
			const d = length > 0 ? Math.abs(px * dy - py * dx) / length : Math.hypot(px, py);
			if (d > worst) {
				worst = d;
				at = i;
			}
		}
		if (at < 0) continue;
		keep[at] = 1;
		open.push([from, at], [at, to]);
	}
	return keep;
}
