/**
 * Fewer points for an open line (x, y pairs) that never leaves the old one by more than `tolerance`
 * (Douglas & Peucker 1973, doi:10.3138/FM57-6770-U75U-7727). Both ends stay.
 */
export function simplifyLine(points: readonly number[], tolerance: number): number[] {
	const n = points.length / 2;
	if (n < 3) return [...points];
	const keep = new Uint8Array(n);
	keep[0] = 1;
	keep[n - 1] = 1;
	const spans: [number, number][] = [[0, n - 1]];
	for (let span = spans.pop(); span; span = spans.pop()) {
		const [from, to] = span;
		const ax = points[from * 2];
		const ay = points[from * 2 + 1];
		const dx = points[to * 2] - ax;
		const dy = points[to * 2 + 1] - ay;
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
