import type { Evidence, PullingTrait, Reading, ReadingNote } from './evidence';
import { fromPlane, positionOf, toPlane, type Corner, type Position, type Pull } from './position';
import type { Thresholds } from './thresholds';

/** One trait's share in where a tooth is placed. */
export interface Reason {
	trait: PullingTrait;
	/** the reading; null = not known */
	value: number | null;
	from: Reading['from'];
	note?: ReadingNote;
	/** the pulls of this trait */
	pull: Pull;
	/** corner that it speaks for or against most; null where it says nothing */
	towards: Corner | null;
	away: Corner | null;
	/** size of the pull against the strongest trait's of this tooth, 0 .. 1 */
	strength: number;
}

export interface Placement {
	position: Position;
	/** outline of the region that holds the true place two times in three, as places; closed, in order */
	region: Position[];
	/** root of the region's area over that of the whole triangle, 0 .. 1 */
	uncertainty: number;
	/** strongest first */
	reasons: Reason[];
}

const OUTLINE = 48;
/** Least distance from a place to the outline of its region, of the triangle's side; ours. */
const LEAST_REACH = 0.03;
/** radius that holds 68 % of a normal distribution in the plane: sqrt(-2 ln 0.32) */
const TWO_IN_THREE = Math.sqrt(-2 * Math.log(0.32));

/** Which way each trait leads, for one unit of pull. */
const TOWARDS: Readonly<Record<PullingTrait, Pull>> = {
	slenderness: [1, 0, -1],
	tip: [-0.5, -0.5, 1],
	edges: [-0.5, 1, -0.5],
	roundness: [-0.5, 1, -0.5],
	section: [-0.5, 1, -0.5],
	curve: [0.5, 0.5, -1],
	wear: [-0.25, -0.25, 0.5],
};
export const PULLING_TRAITS = Object.keys(TOWARDS) as PullingTrait[];

/** Amount of pull of a trait's value, and how much one standard deviation of its scale changes it. */
export function pullAmount(
	trait: PullingTrait,
	value: number,
	t: Thresholds,
): { amount: number; perUnit: number } {
	switch (trait) {
		case 'slenderness':
			return {
				amount: t.slenderness.pull * Math.log(value / t.slenderness.middle),
				perUnit: t.slenderness.pull,
			};
		case 'tip':
			return { amount: t.tip.pull * Math.log(value / t.tip.middle), perUnit: t.tip.pull };
		case 'roundness':
			return { amount: -t.roundness.pull * Math.log(value / t.roundness.middle), perUnit: t.roundness.pull };
		case 'edges':
			return { amount: t.edges.pull * (value - t.edges.middle), perUnit: t.edges.pull };
		case 'section':
			return { amount: t.section.pull * value, perUnit: t.section.pull };
		case 'curve': {
			const steps = (value - t.curve.middle_deg) / t.curve.step_deg;
			return {
				amount: t.curve.pull * Math.max(-1, Math.min(1.2, steps)),
				perUnit: t.curve.pull / t.curve.step_deg,
			};
		}
		case 'wear':
			return { amount: t.wear.pull * Math.min(1, Math.max(0, value)), perUnit: t.wear.pull };
	}
}

/**
 * Place of a tooth between pierce, cut and crush, from what is known of it. Each trait pulls by itself and the pulls add
 * up; a tooth whose traits all say nothing lies in the middle. What is missing or worn pulls by nothing and widens the
 * region. Which way traits pull follows Massare 1987 (J. Vert. Paleontol. 7: 121-137: all teeth vary a cone from bulb to
 * needle to two-edged blade) and Fischer et al. 2022 (doi:10.1098/rspb.2022.1214: crushing to piercing, then edges and
 * curve; surface ornament tells nothing of diet). How much is ours: see Thresholds.
 */
export function placeTooth(evidence: Evidence, thresholds: Thresholds): Placement {
	const parts = PULLING_TRAITS.map((trait) => {
		const { value, spread, from, note } = evidence[trait];
		const { amount, perUnit } = pullAmount(trait, value ?? neutral(trait, thresholds), thresholds);
		const size = value === null ? 0 : amount;
		const pull = TOWARDS[trait].map((share) => share * size) as unknown as Pull;
		return { trait, value, from, note, pull, sd: perUnit * spread };
	});
	const total = parts.reduce<[number, number, number]>(
		(sum, { pull }) => [sum[0] + pull[0], sum[1] + pull[1], sum[2] + pull[2]],
		[0, 0, 0],
	);
	const strongest = Math.max(1e-9, ...parts.map(({ pull }) => reach(pull)));
	const reasons = parts
		.map(({ trait, value, from, note, pull }): Reason => {
			const strength = reach(pull) / strongest;
			const [towards, away] = strength > 0.02 ? ends(pull) : [null, null];
			return { trait, value, from, ...(note ? { note } : {}), pull, towards, away, strength };
		})
		.sort((a, b) => b.strength - a.strength);
	const region = regionOf(
		total,
		parts.map(({ trait, sd }) => TOWARDS[trait].map((share) => share * sd) as unknown as Pull),
	);
	return { position: positionOf(total), region, uncertainty: sizeOf(region), reasons };
}

/** Value at which a trait says nothing. */
function neutral(trait: PullingTrait, t: Thresholds): number {
	if (trait === 'curve') return t.curve.middle_deg;
	return trait === 'section' || trait === 'wear' ? 0 : t[trait].middle;
}

const reach = (pull: Pull): number => Math.max(...pull) - Math.min(...pull);

function ends([pierce, cut, crush]: Pull): [Corner | null, Corner | null] {
	const list: [Corner, number][] = [
		['pierce', pierce],
		['cut', cut],
		['crush', crush],
	];
	list.sort((a, b) => b[1] - a[1]);
	const [first, second, third] = list;
	// two corners alike: it only speaks against the third, or only for the first
	const towards = first[1] - second[1] > 1e-9 ? first[0] : null;
	const away = second[1] - third[1] > 1e-9 ? third[0] : null;
	return [towards, away];
}

/** Ellipse of two in three in the plane of pulls (they sum to 0 there), led into the triangle. */
function regionOf(total: Pull, deviations: readonly Pull[]): Position[] {
	// two axes square to each other and to (1, 1, 1)
	const axes: [Pull, Pull] = [
		[1 / Math.SQRT2, 0, -1 / Math.SQRT2],
		[-1 / Math.sqrt(6), 2 / Math.sqrt(6), -1 / Math.sqrt(6)],
	];
	const dot = (a: Pull, b: Pull): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
	let [uu, uv, vv] = [0, 0, 0];
	for (const deviation of deviations) {
		const [u, v] = [dot(deviation, axes[0]), dot(deviation, axes[1])];
		uu += u * u;
		uv += u * v;
		vv += v * v;
	}
	// the covariance's root (Cholesky)
	const a = Math.sqrt(Math.max(uu, 1e-12));
	const b = uv / a;
	const c = Math.sqrt(Math.max(0, vv - b * b));
	const centre = positionOf(total);
	return Array.from({ length: OUTLINE }, (_, i) => {
		const angle = (2 * Math.PI * i) / OUTLINE;
		const [x, y] = [TWO_IN_THREE * Math.cos(angle), TWO_IN_THREE * Math.sin(angle)];
		const [u, v] = [a * x, b * x + c * y];
		const far = positionOf(
			[0, 1, 2].map((k) => total[k] + axes[0][k] * u + axes[1][k] * v) as unknown as Pull,
		);
		return pushed(centre, far, angle);
	});
}

/** A place moved away from the centre by the least reach: no tooth is ever placed to a point. */
function pushed(centre: Position, far: Position, angle_rad: number): Position {
	const [cx, cy] = toPlane(centre);
	const [x, y] = toPlane(far);
	const away = Math.hypot(x - cx, y - cy);
	const [ux, uy] =
		away > 1e-9 ? [(x - cx) / away, (y - cy) / away] : [Math.cos(angle_rad), Math.sin(angle_rad)];
	return fromPlane(x + LEAST_REACH * ux, y + LEAST_REACH * uy);
}

function sizeOf(region: readonly Position[]): number {
	const points = region.map(toPlane);
	const twice = points.reduce((sum, [x, y], i) => {
		const [nx, ny] = points[(i + 1) % points.length];
		return sum + x * ny - nx * y;
	}, 0);
	return Math.sqrt(Math.abs(twice) / 2 / (Math.sqrt(3) / 4));
}
