/** Corners of the triangle of tooth forms, in the order of every list of three. */
export const CORNERS = ['pierce', 'cut', 'crush'] as const;
export type Corner = (typeof CORNERS)[number];

/** A place in the triangle: three shares, each 0 .. 1, that sum to 1. */
export type Position = Readonly<Record<Corner, number>>;

/** Three pulls towards pierce, cut and crush; only their differences matter. No unit. */
export type Pull = readonly [pierce: number, cut: number, crush: number];

/**
 * How far the three sides of the triangle are moved in before logarithms are taken, so that a corner, where two shares are
 * 0, still is a finite pull. Ours.
 */
export const RIM = 0.025;

/** The middle. */
export const MIDDLE: Position = { pierce: 1 / 3, cut: 1 / 3, crush: 1 / 3 };

/** Three numbers, none of them negative, as shares; the middle where all are 0 or one is not a number. */
export function asPosition(pierce: number, cut: number, crush: number): Position {
	const [p, c, k] = [pierce, cut, crush].map((share) => Math.max(0, share));
	const sum = p + c + k;
	return sum > 0 && Number.isFinite(sum) ? { pierce: p / sum, cut: c / sum, crush: k / sum } : MIDDLE;
}

/** Place to which pulls lead: the shares of a softmax, spread out again to the sides by `RIM`. */
export function positionOf([pierce, cut, crush]: Pull): Position {
	const most = Math.max(pierce, cut, crush);
	const parts = [pierce, cut, crush].map((pull) => Math.exp(pull - most));
	const sum = parts[0] + parts[1] + parts[2];
	const [p, c, k] = parts.map((part) => (part / sum) * (1 + 3 * RIM) - RIM);
	return asPosition(p, c, k);
}

/** Pulls, summing to 0, that lead to a place; the way back from `positionOf`. */
export function pullTo({ pierce, cut, crush }: Position): Pull {
	const logs = [pierce, cut, crush].map((share) => Math.log((share + RIM) / (1 + 3 * RIM)));
	const mean = (logs[0] + logs[1] + logs[2]) / 3;
	return [logs[0] - mean, logs[1] - mean, logs[2] - mean];
}

/**
 * A place as a point of a triangle of side 1 that stands on its pierce-cut side: x to the right, y up.
 * pierce (0, 0), cut (1, 0), crush (0.5, 0.866).
 */
export function toPlane({ cut, crush }: Position): [x: number, y: number] {
	return [cut + crush / 2, (crush * Math.sqrt(3)) / 2];
}

/** The way back from `toPlane`; points outside the triangle are led to its nearest place by dropping what is negative. */
export function fromPlane(x: number, y: number): Position {
	const crush = (2 * y) / Math.sqrt(3);
	const cut = x - crush / 2;
	return asPosition(1 - cut - crush, cut, crush);
}

/** Straight distance between two places in a triangle of side 1; 0 .. 1. */
export function distanceBetween(a: Position, b: Position): number {
	const [ax, ay] = toPlane(a);
	const [bx, by] = toPlane(b);
	return Math.hypot(ax - bx, ay - by);
}
