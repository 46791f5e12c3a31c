/**
 * Fewer points for a closed outline (x, y pairs) that never leaves the old one by more than `tolerance`
 * (Douglas & Peucker 1973, doi:10.3138/FM57-6770-U75U-7727), split at its two farthest corners.
 */
export function simplifyLoop(points: Float64Array, tolerance: number): Float64Array {
	const n = points.length / 2;
	if (n < 4 || !(tolerance > 0)) return points;
	const keep = new Uint8Array(n);
	let far = 0;
	let most = -1;
	for (let i = 1; i < n; i++) {
		const d = (points[i * 2] - points[0]) ** 2 + (points[i * 2 + 1] - points[1]) ** 2;
		if (d > most) {
			most = d;
			far = i;
		}
	}
	keep[0] = 1;
	keep[far] = 1;
	const spans: [number, number][] = [
		[0, far],
		[far, n],
	];
	for (let span = spans.pop(); span; span = spans.pop()) {
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
		spans.push([from, at], [at, to]);
	}
	return points.filter((_, k) => keep[k >> 1] === 1);
}
