import type { Vec3 } from '../vec3';
import type { ToothForm } from './form';

/** A place on the crown's centreline: the section there lies in the plane of `distal` and `labial`. */
export interface Station {
	centre: Vec3;
	/** unit vector that is +x at the base */
	distal: Vec3;
	/** unit vector that is +z at the base */
	labial: Vec3;
	/** unit vector towards the tip */
	along: Vec3;
}

export interface Centreline {
	/** arc length from base to tip, mm */
	length_mm: number;
	/** the station `s` mm above the base; below the base the line runs straight down */
	at(s_mm: number): Station;
	/** arc length at which the line is `y` mm above the base plane */
	heightToArc(y_mm: number): number;
	/** bending at `s`, 1/mm */
	bending(s_mm: number): number;
}

/** Part of the bent stretch over which the bend sets in. */
const ONSET = 0.35;
const STEPS = 400;

/** Share of the total turning reached at x = 0 .. 1 of the bent stretch: bending grows smoothly, then stays even. */
const turned = (x: number): number => {
	if (x <= 0) return 0;
	const soft = x < ONSET ? (x * x) / (2 * ONSET) : x - ONSET / 2;
	return soft / (1 - ONSET / 2);
};

/**
 * Centreline of a crown: a plane curve that turns by the form's angles (distal and lingual taken as the two parts of
 * one turn in a slanting plane), from `startsAt` to the tip.
 */
export function centreline(curve: ToothForm['curve'], length_mm: number): Centreline {
	const total_deg = Math.hypot(curve.distal_deg, curve.lingual_deg);
	const total_rad = (total_deg * Math.PI) / 180;
	const towards: Vec3 =
		total_deg > 0 ? [curve.distal_deg / total_deg, 0, -curve.lingual_deg / total_deg] : [1, 0, 0];
	const turning = (s: number): number =>
		total_rad * turned((s / length_mm - curve.startsAt) / (1 - curve.startsAt));

	// running integrals of the direction: height and lean at equal steps of arc length
	const heights = new Float64Array(STEPS + 1);
	const leans = new Float64Array(STEPS + 1);
	const step = length_mm / STEPS;
	for (let i = 0; i < STEPS; i++) {
		const angle = turning((i + 0.5) * step);
		heights[i + 1] = heights[i] + Math.cos(angle) * step;
		leans[i + 1] = leans[i] + Math.sin(angle) * step;
	}
	const read = (table: Float64Array, s: number): number => {
		const i = Math.min(STEPS - 1, Math.floor(s / step));
		return table[i] + (table[i + 1] - table[i]) * (s / step - i);
	};

	return {
		length_mm,
		at(s) {
			if (s <= 0 || total_rad === 0)
				return { centre: [0, s, 0], distal: [1, 0, 0], labial: [0, 0, 1], along: [0, 1, 0] };
			const angle = turning(s);
			const [c, n] = [Math.cos(angle), Math.sin(angle)];
			const [ux, , uz] = towards;
			const lean = read(leans, s);
			return {
				centre: [lean * ux, read(heights, s), lean * uz],
				// rotation of x, z and y by `angle` about the axis that takes y to `towards`
				distal: [1 + (c - 1) * ux * ux, -n * ux, (c - 1) * ux * uz],
				labial: [(c - 1) * ux * uz, -n * uz, 1 + (c - 1) * uz * uz],
				along: [n * ux, c, n * uz],
			};
		},
		heightToArc(y) {
			if (y <= 0) return y;
			let [low, high] = [0, STEPS];
			while (high - low > 1) {
				const middle = (low + high) >> 1;
				if (heights[middle] <= y) low = middle;
				else high = middle;
			}
			const rise = heights[high] - heights[low];
			return Math.min(length_mm, (low + (rise > 0 ? (y - heights[low]) / rise : 0)) * step);
		},
		bending(s) {
			return (turning(s + step / 2) - turning(s - step / 2)) / step;
		},
	};
}
