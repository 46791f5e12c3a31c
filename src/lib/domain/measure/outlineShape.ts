import type { OutlineShape } from './crownMeasures';
import { DIRECTIONS, type PolarOutline } from './polarOutline';
import { withoutLines } from './withoutLines';

/**
 * Limits between kinds of outline; ours, set half way between the plain figures. `a3` and `a4` are the third and fourth
 * harmonics of the logarithm of the stretched radius (see polarOutline.ts), `a6` the sixth towards the ends of a lens.
 * Ridges (fine harmonics) hardly touch them; keels are cut off where they matter.
 */
export const OUTLINE_LIMITS = {
	/** width over length of a round outline, at least; common practice, no source */
	roundRatio: 0.9,
	/** a3 of a triangular outline, at least: an equilateral triangle has 0.25, a half-round with a flat face 0.08 */
	triangularA3: 0.16,
	/** a3 of any outline that is alike on both sides, at most: half that of a half-round with a flat face */
	evenA3: 0.04,
	/** a4 of a blade, at least: a lens of two parabolas has 0.055, an ellipse 0 */
	bladeA4: 0.0275,
	/** a6 of a blade, at least: a lens of two parabolas has 0.014, whatever is alike at both axes 0 */
	bladeA6: 0.006,
	/** a4 of a round or oval outline, at most: the superellipse of power 2.4 has 0.025, a square 0.09 */
	ovalA4: 0.055,
	/** points of an outline, at least, that tell its kind */
	points: 16,
} as const;

/** Kind of an outline, its edges and ridges smoothed off; null when it has too few points to tell. */
export function outlineShape({ points, logRadius, stretch }: PolarOutline): OutlineShape | null {
	if (points < OUTLINE_LIMITS.points) return null;
	const found = kindOf(logRadius);
	// two keels make a lens of an oval: with them cut off, a true lens still stands out at its ends
	const oval = found === 'blade' && !isLensWithoutKeels(logRadius);
	if (found !== 'even' && !oval) return found;
	return ratioOf(stretch) >= OUTLINE_LIMITS.roundRatio ? 'round' : 'oval';
}

/**
 * Direction of the ends of an outline that may be a lens: it stands out there in the sixth harmonic as well as in the fourth, and
 * whatever has four corners does not.
 */
function endsOf(logRadius: Float64Array): number {
	const sixth = harmonic(logRadius, 6);
	const { phase_rad } = harmonic(logRadius, 4);
	const across = phase_rad + Math.PI / 2;
	return sixth.along(phase_rad) >= sixth.along(across) ? phase_rad : across;
}

const isLensWithoutKeels = (logRadius: Float64Array): boolean =>
	harmonic(withoutLines(logRadius), 4).along(endsOf(logRadius)) >= OUTLINE_LIMITS.bladeA4 / 2;

/** `even` is round or oval. */
function kindOf(logRadius: Float64Array): 'triangular' | 'other' | 'blade' | 'even' {
	const a3 = harmonic(logRadius, 3).size;
	if (a3 >= OUTLINE_LIMITS.triangularA3) return 'triangular';
	if (a3 > OUTLINE_LIMITS.evenA3) return 'other';
	const { bladeA4, bladeA6, ovalA4 } = OUTLINE_LIMITS;
	const fourth = harmonic(logRadius, 4);
	if (fourth.size >= bladeA4 && harmonic(logRadius, 6).along(endsOf(logRadius)) >= bladeA6) return 'blade';
	// five corners
	if (harmonic(logRadius, 5).size > OUTLINE_LIMITS.evenA3 / 2) return 'other';
	return fourth.size > ovalA4 ? 'other' : 'even';
}

/** Third harmonic of an outline: 0.25 for a triangle, 0 for whatever has two axes. */
export const thirdHarmonic = ({ logRadius }: PolarOutline): number => harmonic(logRadius, 3).size;

/** Ratio of the shorter to the longer axis: the longer one is shortened most. */
function ratioOf([xx, xy, yy]: PolarOutline['stretch']): number {
	const middle = (xx + yy) / 2;
	const half = Math.hypot((xx - yy) / 2, xy);
	return (middle - half) / (middle + half);
}

interface Harmonic {
	size: number;
	/** where it is greatest */
	phase_rad: number;
	/** its value in a direction, over all that it takes there */
	along(angle_rad: number): number;
}

function harmonic(values: Float64Array, n: number): Harmonic {
	let cos = 0;
	let sin = 0;
	for (let i = 0; i < DIRECTIONS; i++) {
		const t = (2 * Math.PI * n * i) / DIRECTIONS;
		cos += (values[i] * Math.cos(t) * 2) / DIRECTIONS;
		sin += (values[i] * Math.sin(t) * 2) / DIRECTIONS;
	}
	return {
		size: Math.hypot(cos, sin),
		phase_rad: Math.atan2(sin, cos) / n,
		along: (angle) => cos * Math.cos(n * angle) + sin * Math.sin(n * angle),
	};
}
