import type { SectionShape } from './form';

/** A point of a section in its own plane: [distal, labial]. */
export type Point2 = readonly [number, number];

/** Exponent of the slightly squared ellipse. */
const OVAL_POWER = 2.4;
/** How crisp the rounded corners are where faces meet; higher = sharper. */
const TRIANGLE_POWER = 11;
const FLAT_POWER = 9;
/** Where the flat face cuts the ellipse of a flat-sided section, before it is fitted to the box. */
const FLAT_AT = 0.5;
/** Direction of the distal corner of the triangular section from its middle. */
const CORNER_RAD = Math.PI / 4;

const TURN = 2 * Math.PI;
const LABIAL_STRETCH = 1 - (2 * CORNER_RAD) / Math.PI;
const LINGUAL_STRETCH = 1 + (2 * CORNER_RAD) / Math.PI;

/** Section angles 0, 180 and 270 degrees are led onto the three edges of the triangle, 90 onto its flat face. */
function triangleDirection(angle_rad: number): number {
	const a = ((angle_rad % TURN) + TURN) % TURN;
	if (a <= Math.PI) return CORNER_RAD + a * LABIAL_STRETCH;
	return Math.PI - CORNER_RAD + (a - Math.PI) * LINGUAL_STRETCH;
}

const polar = (radius: number, c: number, s: number): Point2 => [radius * c, radius * s];

const ROUGH: Readonly<Record<SectionShape, (angle_rad: number) => Point2>> = {
	round: (a) => [Math.cos(a), Math.sin(a)],
	oval: (a) => {
		const [c, s] = [Math.cos(a), Math.sin(a)];
		return polar((Math.abs(c) ** OVAL_POWER + Math.abs(s) ** OVAL_POWER) ** (-1 / OVAL_POWER), c, s);
	},
	// two parabolic arcs z = +-(1 - x^2): the lens of circular arcs for thin sections, and right for any ratio
	blade: (a) => {
		const [c, s] = [Math.cos(a), Math.abs(Math.sin(a))];
		const radius = 2 / (s + Math.sqrt(s * s + 4 * c * c));
		return polar(radius, c, Math.sin(a));
	},
	triangular: (a) => {
		const [c, s] = [Math.cos(a), Math.sin(a)];
		const faces = [s, 2 * c - s, -2 * c - s];
		const sum = faces.reduce((total, d) => total + Math.max(0, d) ** TRIANGLE_POWER, 0);
		return polar(sum ** (-1 / TRIANGLE_POWER), c, s);
	},
	'flat-sided': (a) => {
		const [c, s] = [Math.cos(a), Math.sin(a)];
		return polar((1 + Math.max(0, s / FLAT_AT) ** FLAT_POWER) ** (-1 / FLAT_POWER), c, s);
	},
};

/** Scale and shift that fit each rough outline into the box -1 .. 1 both ways. */
const FIT = Object.fromEntries(
	Object.entries(ROUGH).map(([shape, outline]) => {
		let [right, low, high] = [0, 0, 0];
		for (let i = 0; i < 3600; i++) {
			const [x, z] = outline((i / 3600) * TURN);
			right = Math.max(right, x);
			low = Math.min(low, z);
			high = Math.max(high, z);
		}
		return [shape, { x: 1 / right, z: 2 / (high - low), middle: (high + low) / 2 }];
	}),
) as Record<SectionShape, { x: number; z: number; middle: number }>;

/**
 * Outline of a section that touches the box -1 .. 1 on all four sides, at a section angle (radians, as in form.ts,
 * measured in the box: multiply x by half the length and z by half the width afterwards).
 * `threeEdged` stretches the angles so that 0, 180 and 270 degrees fall on the edges of a triangular section; all
 * sections of a form that has a triangular one are read so, or its edges would wind round the crown.
 */
export function sectionOutline(shape: SectionShape, angle_rad: number, threeEdged = false): Point2 {
	const [x, z] = ROUGH[shape](threeEdged ? triangleDirection(angle_rad) : angle_rad);
	const fit = FIT[shape];
	return [x * fit.x, (z - fit.middle) * fit.z];
}

/** Section angles (radians) at which a three-edged form is really most distal and most mesial. */
export const THREE_EDGED_ENDS = [
	Math.PI + (Math.PI + CORNER_RAD) / LINGUAL_STRETCH,
	Math.PI + CORNER_RAD / LINGUAL_STRETCH,
] as const;
