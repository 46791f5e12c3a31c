import { convexHull2d } from '../mesh/convexHull2d';
import { polygonMoments } from '../mesh/polygonMoments';

type Point = readonly [number, number];

export interface BasePoints {
	/** middle between the base points */
	centre: Point;
	/** unit, mesial to distal */
	direction: Point;
	mesial: Point;
	distal: Point;
	/** extent along the direction */
	length: number;
	/** extent across it */
	width: number;
}

/** Least difference of diameters, and of second moments, that tells length from width. */
const DIFFERENT = 0.015;
/** Least lean of the apex, as a share of the base's length, that tells distal from mesial. */
const LEANS = 0.01;

/**
 * Mesial and distal point of an unmarked base outline (x, y pairs in the base plane): the longer diameter is the
 * length; the apex leans to distal. A base as wide as long takes the direction of the lean as its length.
 * What the shape does not tell is warned about.
 */
export function basePoints(
	outline: Float64Array,
	apex: Point,
	warn: (code: string, message: string) => void,
): BasePoints {
	const hull = convexHull2d(outline);
	const moments = polygonMoments(hull);
	const lean: Point = [apex[0] - moments.centroid[0], apex[1] - moments.centroid[1]];
	const leaning = Math.hypot(lean[0], lean[1]);
	const half = Math.atan2(2 * moments.xy, moments.xx - moments.yy) / 2;
	const mean = (moments.xx + moments.yy) / 2;
	const anisotropy = Math.hypot(moments.xx - moments.yy, 2 * moments.xy) / 2 / mean;
	let direction: Point = [Math.cos(half), Math.sin(half)];
	let told = anisotropy > DIFFERENT;
	if (told) {
		// moments give the axes of symmetry, diameters say which of them is longer
		const along = extent(hull, direction);
		const across = extent(hull, [-direction[1], direction[0]]);
		if (Math.abs(along.size - across.size) < DIFFERENT * along.size) {
			told = false;
			if (Math.abs(lean[0] * direction[1] - lean[1] * direction[0]) > leaning * Math.SQRT1_2) {
				direction = [-direction[1], direction[0]];
			}
		} else if (across.size > along.size) {
			direction = [-direction[1], direction[0]];
		}
	} else if (leaning > 0) {
		direction = [lean[0] / leaning, lean[1] / leaning];
	}
	if (!told) {
		warn(
			'length-width-alike',
			'The base is about as wide as long: the lean of the apex was taken for the length.',
		);
	}
	let side = lean[0] * direction[0] + lean[1] * direction[1];
	let ends = extent(hull, direction);
	if (Math.abs(side) < LEANS * ends.size) {
		warn(
			'mesial-distal-unclear',
			'The apex stands over the middle of the base: mesial and distal may be swapped.',
		);
	}
	if (side < 0) {
		direction = [-direction[0], -direction[1]];
		ends = extent(hull, direction);
		side = -side;
	}
	const across = extent(hull, [-direction[1], direction[0]]);
	return {
		centre: [(ends.low[0] + ends.high[0]) / 2, (ends.low[1] + ends.high[1]) / 2],
		direction,
		mesial: ends.low,
		distal: ends.high,
		length: ends.size,
		width: across.size,
	};
}

/** Extent of a convex outline along a direction, and its end points (the middle of a flat end). */
function extent(hull: Float64Array, d: Point): { size: number; low: Point; high: Point } {
	let least = Infinity;
	let most = -Infinity;
	for (let i = 0; i < hull.length; i += 2) {
		const t = hull[i] * d[0] + hull[i + 1] * d[1];
		if (t < least) least = t;
		if (t > most) most = t;
	}
	const size = most - least;
	const middle = (level: number): Point => {
		let from = Infinity;
		let to = -Infinity;
		for (let i = 0; i < hull.length; i += 2) {
			if (Math.abs(hull[i] * d[0] + hull[i + 1] * d[1] - level) > size * 0.001) continue;
			const s = hull[i + 1] * d[0] - hull[i] * d[1];
			if (s < from) from = s;
			if (s > to) to = s;
		}
		const s = (from + to) / 2;
		return [level * d[0] - s * d[1], level * d[1] + s * d[0]];
	};
	return { size, low: middle(least), high: middle(most) };
}
