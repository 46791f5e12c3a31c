import { lerp, smoothstep } from '../tooth/smooth';
import { pullTo, type Position } from './position';
import type { Thresholds } from './thresholds';

/** A crown's shape without its size: what the triangle and a jaw's row are told in. */
export interface CrownTraits {
	/** height over the longer base diameter */
	slenderness: number;
	/** tip radius over the mean radius of the base */
	tip: number;
	/** base width over base length, up to 1 */
	roundness: number;
	/** edge score as in evidence.ts: 0 none .. 1 two strong sharp edges */
	edges: number;
	/** 0 = ellipse .. 1 = lens, half-way up */
	lens: number;
	/** how full the outline is: -1 needle, 0 straight, 1 bullet, 2 dome */
	fullness: number;
	/** how far the crown bends, backwards and inwards together, degrees */
	curve_deg: number;
}

/** Ends that keep every form one that can be sculpted; ours. */
export const TRAIT_LIMITS = {
	slenderness: [0.5, 6],
	tip: [0.05, 0.62],
	roundness: [0.3, 1],
	edges: [0, 1],
	lens: [0, 1],
	fullness: [-1, 2],
	curve_deg: [0, 45],
} as const satisfies Readonly<Record<keyof CrownTraits, readonly [number, number]>>;

/** How the pulls of a place are shared out among traits; ours, chosen so that the corners look like what they are called. */
const SHARES = {
	/** logarithm of the tip for each pull of pierce over crush */
	tip: -0.26,
	curve_deg: 4,
	/** thinness of the base, edge score and lens at the cut corner */
	thin: 0.7,
	edge: 0.65,
	/** lens share at which a section begins to be measured as a lens, and surely is */
	lensFrom: 0.2,
	lensTo: 0.7,
	/** outline at crush, middle, pierce */
	fullness: [2, 0.6, -0.8],
} as const;

/** Traits within limits. */
export function limitTraits(traits: CrownTraits): CrownTraits {
	const within = Object.entries(TRAIT_LIMITS).map(([key, [low, high]]) => [
		key,
		Math.min(high, Math.max(low, traits[key as keyof CrownTraits])),
	]);
	return Object.fromEntries(within) as unknown as CrownTraits;
}

/**
 * How much of a blade leads to a pull towards cut, 0 .. 1: base, edges and section rise together. The measured section is an
 * oval or a lens and nothing between; it is taken to turn from one into the other by degrees.
 */
function bladeFor(pull: number, t: Thresholds): number {
	const pullOf = (blade: number): number =>
		1.5 *
		((SHARES.thin * t.roundness.pull + SHARES.edge * t.edges.pull) * blade +
			t.section.pull * smoothstep(SHARES.lensFrom, SHARES.lensTo, blade));
	if (pull <= 0) return 0;
	let [low, high] = [0, 1];
	for (let i = 0; i < 40; i++) {
		const middle = (low + high) / 2;
		if (pullOf(middle) < pull) low = middle;
		else high = middle;
	}
	return (low + high) / 2;
}

/**
 * Traits of the crown that stands for a place: needle at pierce, two-edged blade at cut, dome at crush, a stout pointed
 * cone in the middle, everything between them by degrees. The way back of `placeTooth`: the traits are chosen so that
 * their pulls lead to this place again, as nearly as limits allow. Continuous.
 */
export function traitsAt(position: Position, t: Thresholds): CrownTraits {
	const [pierce, cut, crush] = pullTo(position);
	/** pierce over crush; cut over the mean of both */
	const slim = pierce - crush;
	const sharp = cut - (pierce + crush) / 2;
	const tipLog = SHARES.tip * slim;
	const curve_deg = Math.max(0, t.curve.middle_deg + SHARES.curve_deg * slim);
	const curvePull = (t.curve.pull * (curve_deg - t.curve.middle_deg)) / t.curve.step_deg;
	// what tip and curve leave to do
	const leftSlim = slim + 1.5 * t.tip.pull * tipLog - 1.5 * curvePull;
	const leftSharp = sharp + 0.75 * t.tip.pull * tipLog - 0.75 * curvePull;
	const slenderLog = leftSlim / (2 * t.slenderness.pull);
	const blade = bladeFor(leftSharp, t);
	const roundLeast = 1.5 * (-Math.log(t.roundness.middle) * t.roundness.pull + t.edges.middle * t.edges.pull);
	const plain = Math.min(1, Math.max(0, -leftSharp / roundLeast));
	const [full, middle, thin] = SHARES.fullness;
	const side = Math.min(1, Math.abs(slim) / 3.7);
	return limitTraits({
		slenderness: t.slenderness.middle * Math.exp(slenderLog),
		tip: t.tip.middle * Math.exp(tipLog),
		roundness: t.roundness.middle * Math.exp(-SHARES.thin * blade - plain * Math.log(t.roundness.middle)),
		edges: t.edges.middle * (1 - plain) + SHARES.edge * blade,
		lens: blade,
		fullness: lerp(middle, slim > 0 ? thin : full, side),
		curve_deg,
	});
}
