import { vec3, type Vec3 } from '../vec3';

/** One end of a caliper on a tooth. */
export interface CaliperEnd {
	/** on the surface, tooth frame, mm */
	point: Vec3;
	/** how finely it could be placed: a pixel's width for a finger, the length of a step for a key; mm */
	placed_mm: number;
}

export interface CaliperReading {
	/** straight from end to end, not along the surface */
	length_mm: number;
	/** how sure: both ends taken together, mm */
	precision_mm: number;
	/** digits after the point that this precision supports, 0 .. 2 */
	decimals: number;
}

/** Reads a caliper: errors of the two ends are independent and add up as squares. */
export function caliper(a: CaliperEnd, b: CaliperEnd): CaliperReading {
	const precision_mm = Math.hypot(a.placed_mm, b.placed_mm);
	const digits = precision_mm > 0 ? Math.round(-Math.log10(precision_mm)) : 2;
	return {
		length_mm: vec3.distance(a.point, b.point),
		precision_mm,
		decimals: Math.min(2, Math.max(0, digits)),
	};
}
