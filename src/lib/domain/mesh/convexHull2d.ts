/**
 * Convex hull of points in a plane, counter-clockwise, without points on its edges (Andrew's monotone chain,
 * doi:10.1016/0020-0190(79)90072-3). `points` and the result are x, y pairs.
 */
export function convexHull2d(points: Float64Array): Float64Array {
	if (points.length < 6) return points.slice();
	const order = withoutInner(points);
	const n = order.length;
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

/** Numbers of the points that are not well inside the hull: those outside the polygon of the extremes in 16 directions. */
function withoutInner(points: Float64Array): Uint32Array {
	const n = points.length / 2;
	const all = Uint32Array.from({ length: n }, (_, i) => i);
	if (n < 256) return all;
	const corners: number[] = [];
	for (let d = 0; d < 16; d++) {
		const c = Math.cos((Math.PI * d) / 8);
		const s = Math.sin((Math.PI * d) / 8);
		let best = 0;
		let most = -Infinity;
		for (let i = 0; i < n; i++) {
			const h = points[i * 2] * c + points[i * 2 + 1] * s;
			if (h > most) {
				most = h;
				best = i;
			}
		}
		if (corners.at(-1) !== best && corners[0] !== best) corners.push(best);
	}
	if (corners.length < 3) return all;
	return all.filter((i) => {
		const x = points[i * 2];
		const y = points[i * 2 + 1];
		for (let k = 0; k < corners.length; k++) {
			const a = corners[k] * 2;
			const b = corners[(k + 1) % corners.length] * 2;
			const ax = points[a];
			const ay = points[a + 1];
			if ((points[b] - ax) * (y - ay) - (points[b + 1] - ay) * (x - ax) <= 0) return true;
		}
		return false;
	});
}
