import { polygonMoments } from '../mesh/polygonMoments';

/** Directions in which an outline is sampled, half a degree apart. */
export const DIRECTIONS = 720;

/**
 * An outline round its centroid, stretched so that its second moments are those of a circle of radius 1: an ellipse of
 * any ratio becomes that circle, so what is left is the kind of outline (corners, faces, lines), not its flatness.
 */
export interface PolarOutline {
	centre: readonly [number, number];
	/** middle of its extents along u and v */
	middle: readonly [number, number];
	/** symmetric matrix xx, xy, yy that takes the outline's plane (mm) to the stretched one */
	stretch: readonly [number, number, number];
	/** radius of the circle of the same area, mm */
	meanRadius_mm: number;
	/** natural logarithm of the stretched radius per direction */
	logRadius: Float64Array;
	/** points of the outline that was sampled */
	points: number;
}

/** Samples a closed outline (x, y pairs, either way round); null when it has no area or does not go round its centroid. */
export function polarOutline(outline: Float64Array): PolarOutline | null {
	const { centroid, area, xx, yy, xy } = polygonMoments(outline);
	const root = Math.sqrt(Math.max(0, xx * yy - xy * xy));
	if (!(area > 0) || !(root > 1e-9 * (xx + yy))) return null;
	// square root of the matrix of moments, times two: a circle of radius 1 has moments of a quarter
	const scale = 2 / Math.sqrt(xx + yy + 2 * root);
	const a = (xx + root) * scale;
	const b = xy * scale;
	const d = (yy + root) * scale;
	const det = a * d - b * b;
	const stretch = [d / det, -b / det, a / det] as const;
	const radius = sample(outline, centroid, stretch);
	if (!radius) return null;
	return {
		centre: centroid,
		middle: middleOf(outline),
		stretch,
		meanRadius_mm: Math.sqrt(area / Math.PI),
		logRadius: radius.map(Math.log),
		points: outline.length / 2,
	};
}

function middleOf(outline: Float64Array): readonly [number, number] {
	const low = [Infinity, Infinity];
	const high = [-Infinity, -Infinity];
	for (let i = 0; i < outline.length; i++) {
		low[i % 2] = Math.min(low[i % 2], outline[i]);
		high[i % 2] = Math.max(high[i % 2], outline[i]);
	}
	return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];
}

/** Greatest stretched radius of the outline in every direction. */
function sample(
	outline: Float64Array,
	[cx, cy]: readonly [number, number],
	[mxx, mxy, myy]: readonly [number, number, number],
): Float64Array | null {
	const out = new Float64Array(DIRECTIONS);
	const step = (2 * Math.PI) / DIRECTIONS;
	let [px, py, from] = [0, 0, 0];
	for (let i = 0; i <= outline.length; i += 2) {
		const k = i % outline.length;
		const ux = outline[k] - cx;
		const uy = outline[k + 1] - cy;
		const x = mxx * ux + mxy * uy;
		const y = mxy * ux + myy * uy;
		const to = Math.atan2(y, x);
		if (i > 0) {
			let turn = to - from;
			if (turn > Math.PI) turn -= 2 * Math.PI;
			if (turn < -Math.PI) turn += 2 * Math.PI;
			const low = turn < 0 ? from + turn : from;
			const first = Math.ceil(low / step - 1e-9);
			const last = Math.floor((low + Math.abs(turn)) / step + 1e-9);
			const cross = px * y - py * x;
			for (let j = first; j <= last; j++) {
				const c = Math.cos(j * step);
				const s = Math.sin(j * step);
				const under = c * (y - py) - s * (x - px);
				const r = Math.abs(under) > 1e-14 ? cross / under : Math.hypot(x, y);
				const at = ((j % DIRECTIONS) + DIRECTIONS) % DIRECTIONS;
				if (r > out[at]) out[at] = r;
			}
		}
		[px, py, from] = [x, y, to];
	}
	return out.every((r) => r > 0) ? out : null;
}
