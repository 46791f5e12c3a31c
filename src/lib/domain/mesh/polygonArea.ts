/** Signed area of a closed polygon given as x, y pairs (shoelace): positive when counter-clockwise. */
export function polygonArea(points: Float64Array): number {
	const n = points.length;
	if (n < 6) return 0;
	const x0 = points[0];
	const y0 = points[1];
	let sum = 0;
	for (let i = 2; i + 3 < n; i += 2) {
		sum += (points[i] - x0) * (points[i + 3] - y0) - (points[i + 1] - y0) * (points[i + 2] - x0);
	}
	return sum / 2;
}
