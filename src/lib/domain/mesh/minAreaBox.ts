import { convexHull2d } from './convexHull2d';

export interface MinAreaBox {
	/** longer side */
	length: number;
	/** shorter side */
	width: number;
	/** angle of the longer side from +x, degrees, -90 < angle <= 90 */
	angle_deg: number;
}

/**
 * Smallest-area rectangle round points (x, y pairs): one of its sides lies along a side of the convex hull
 * (Freeman & Shapira 1975, doi:10.1145/360881.360919).
 */
export function minAreaBox(points: Float64Array): MinAreaBox {
	const hull = convexHull2d(points);
	const n = hull.length;
	let best = { length: 0, width: 0, angle_deg: 0 };
	let bestArea = Infinity;
	for (let i = 0; i < n; i += 2) {
		const j = (i + 2) % n;
		const dx = hull[j] - hull[i];
		const dy = hull[j + 1] - hull[i + 1];
		const side = Math.hypot(dx, dy);
		if (!(side > 0)) continue;
		const ux = dx / side;
		const uy = dy / side;
		let a0 = Infinity;
		let a1 = -Infinity;
		let b1 = -Infinity;
		let b0 = Infinity;
		for (let k = 0; k < n; k += 2) {
			const a = hull[k] * ux + hull[k + 1] * uy;
			const b = hull[k + 1] * ux - hull[k] * uy;
			if (a < a0) a0 = a;
			if (a > a1) a1 = a;
			if (b < b0) b0 = b;
			if (b > b1) b1 = b;
		}
		const along = a1 - a0;
		const across = b1 - b0;
		if (along * across >= bestArea) continue;
		bestArea = along * across;
		let angle = (Math.atan2(uy, ux) * 180) / Math.PI + (along >= across ? 0 : 90);
		while (angle > 90) angle -= 180;
		while (angle <= -90) angle += 180;
		best = { length: Math.max(along, across), width: Math.min(along, across), angle_deg: angle };
	}
	return best;
}
