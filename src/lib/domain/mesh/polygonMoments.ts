export interface PolygonMoments {
	/** unsigned */
	area: number;
	centroid: readonly [number, number];
	/** second moments of area about the centroid over the area: mean x*x, y*y and x*y */
	xx: number;
	yy: number;
	xy: number;
}

/** Area, centroid and second moments of a closed polygon given as x, y pairs, in either direction. */
export function polygonMoments(points: Float64Array): PolygonMoments {
	const n = points.length;
	const x0 = points[0] ?? 0;
	const y0 = points[1] ?? 0;
	let area = 0;
	let sx = 0;
	let sy = 0;
	let sxx = 0;
	let syy = 0;
	let sxy = 0;
	for (let i = 0; i < n; i += 2) {
		const j = i + 2 < n ? i + 2 : 0;
		const ax = points[i] - x0;
		const ay = points[i + 1] - y0;
		const bx = points[j] - x0;
		const by = points[j + 1] - y0;
		const c = ax * by - ay * bx;
		area += c;
		sx += c * (ax + bx);
		sy += c * (ay + by);
		sxx += c * (ax * ax + ax * bx + bx * bx);
		syy += c * (ay * ay + ay * by + by * by);
		sxy += c * (2 * ax * ay + ax * by + bx * ay + 2 * bx * by);
	}
	if (!(Math.abs(area) > 0)) return { area: 0, centroid: [x0, y0], xx: 0, yy: 0, xy: 0 };
	const cx = sx / (3 * area);
	const cy = sy / (3 * area);
	return {
		area: Math.abs(area) / 2,
		centroid: [x0 + cx, y0 + cy],
		xx: sxx / (6 * area) - cx * cx,
		yy: syy / (6 * area) - cy * cy,
		xy: sxy / (12 * area) - cx * cy,
	};
}
