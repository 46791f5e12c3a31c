/**
 * Convex hull of points in a plane, counter-clockwise, without points on its edges (Andrew's monotone chain,
 * doi:10.1016/0020-0190(79)90072-3). `points` and the result are x, y pairs.
 */
export function convexHull2d(points: Float64Array): Float64Array {
	const n = points.length / 2;
	if (n < 3) return points.slice();
	const order = new Uint32Array(n);
	for (let i = 0; i < n; i++) order[i] = i;
	order.sort((i, j) => points[i * 2] - points[j * 2] || points[i * 2 + 1] - points[j * 2 + 1]);
	const hull = new Uint32Array(2 * n + 2);
	let size = 0;
	const turnsRight = (c: number): boolean => {
		const a = hull[size - 2];
		const b = hull[size - 1];
		const ax = points[a * 2];
		const ay = points[a * 2 + 1];
		return (
			(points[b * 2] - ax) * (points[c * 2 + 1] - ay) - (points[b * 2 + 1] - ay) * (points[c * 2] - ax) <= 0
		);
	};
	for (let i = 0; i < n; i++) {
		while (size >= 2 && turnsRight(order[i])) size--;
		hull[size++] = order[i];
	}
	const lower = size + 1;
	for (let i = n - 2; i >= 0; i--) {
		while (size >= lower && turnsRight(order[i])) size--;
		hull[size++] = order[i];
	}
	size--; // the last point is the first again
	const out = new Float64Array(size * 2);
	for (let i = 0; i < size; i++) {
		out[i * 2] = points[hull[i] * 2];
		out[i * 2 + 1] = points[hull[i] * 2 + 1];
	}
	return out;
}
