import { DIRECTIONS } from './polarOutline';

/** A place where one section's outline stands out: a raised line between two hollows, or a corner without hollows. */
export interface Crest {
	/** direction in the stretched plane, degrees 0 .. 360 */
	direction_deg: number;
	/** turning of the outline within `WINDOW_DEG` round it, degrees */
	turning_deg: number;
	/** hollows on both sides, which no convex section has */
	raised: boolean;
	/** how much more the raised part turns than the circle does over the same angle, degrees; 0 for a corner */
	excess_deg: number;
	/** angle round the section between the hollows, degrees; 0 for a corner */
	width_deg: number;
	/** the middles of the hollows beside it, directions (numbers, the first 0 .. DIRECTIONS, the second greater); null for a corner */
	between: readonly [number, number] | null;
	/** height over the line through the two hollows, or over the outline smoothed, as a share of the radius there */
	prominence: number;
}

const STEP = (2 * Math.PI) / DIRECTIONS;
const DEG = 180 / Math.PI;
/** Turning is summed over this angle round a corner, degrees: wider than the smoothing, narrower than a rounded face. */
export const WINDOW_DEG = 5;
const HALF_WINDOW = Math.floor(((WINDOW_DEG / 2) * DIRECTIONS) / 360);
/** Corners that turn less are not listed, degrees; a circle turns by 5. */
const LEAST_CORNER_DEG = 18;
/** Least angle between two corners, directions. */
const APART = 12;
/** A wider raised part is the body between two hollows, degrees: a sixfold wave is 36 wide. */
const WIDEST_DEG = 42;
/** Smoothing of the outline that a corner stands out from, directions (13 degrees). */
const BROAD = 26;

/** Gaussian smoothing round the circle; `sigma` in directions. */
export function smoothRound(values: Float64Array, sigma: number): Float64Array {
	const reach = Math.ceil(3 * sigma);
	const kernel = Float64Array.from({ length: 2 * reach + 1 }, (_, i) =>
		Math.exp(-0.5 * ((i - reach) / sigma) ** 2),
	);
	const sum = kernel.reduce((a, b) => a + b);
	const n = values.length;
	const out = new Float64Array(n);
	for (let i = 0; i < n; i++) {
		let total = 0;
		let at = i - reach;
		while (at < 0) at += n;
		for (let k = 0; k < kernel.length; k++) {
			total += values[at] * kernel[k];
			if (++at === n) at = 0;
		}
		out[i] = total / sum;
	}
	return out;
}

/**
 * Direction of the outline's tangent against that of a circle, degrees, from the logarithm of its radius: with the angle
 * added it rises where the outline is convex and falls in hollows.
 */
export function tangents(logRadius: Float64Array): Float64Array {
	const n = logRadius.length;
	return Float64Array.from(
		logRadius,
		(_, i) => -Math.atan((logRadius[(i + 1) % n] - logRadius[(i + n - 1) % n]) / (2 * STEP)) * DEG,
	);
}

/**
 * Crests of one outline, from the smoothed logarithm of its stretched radius.
 *
 * @param leastHollow_deg hollows that turn back less than this are noise, degrees
 */
export function crests(logRadius: Float64Array, leastHollow_deg: number): Crest[] {
	const n = DIRECTIONS;
	const tangent = tangents(logRadius);
	const wrap = (i: number): number => ((i % n) + n) % n;
	const heading = (i: number): number => i * STEP * DEG + tangent[wrap(i)];
	const turning = (i: number): number => heading(i + HALF_WINDOW) - heading(i - HALF_WINDOW);
	const sharpest = (from: number, to: number): number => {
		let best = from;
		for (let i = from; i <= to; i++) if (turning(i) > turning(best)) best = i;
		return best;
	};
	const found: Crest[] = [];
	/** where raised crests stand, a little more */
	const spans: { low: number; high: number }[] = [];
	const turns = turningPoints(tangent, leastHollow_deg);
	for (let k = 1; k + 2 < turns.length; k++) {
		if (turns[k].top || !turns[k + 1].top) continue;
		const low = turns[k].at;
		const high = turns[k + 1].at;
		const middle = (low + high) / 2;
		if (middle < n || middle >= 2 * n) continue;
		const width_deg = (high - low) * STEP * DEG;
		if (width_deg > WIDEST_DEG) continue;
		const left = halfWay(heading, turns[k - 1].at, low);
		const right = halfWay(heading, high, turns[k + 2].at);
		const top = highest(logRadius, left, right);
		const sharp = sharpest(low, high);
		spans.push({ low: low - HALF_WINDOW, high: high + HALF_WINDOW });
		found.push({
			direction_deg: wrap(top.at) * STEP * DEG,
			turning_deg: turning(sharp),
			raised: true,
			excess_deg: heading(high) - heading(low) - width_deg,
			width_deg,
			between: [wrap(left), wrap(left) + right - left],
			prominence: top.height,
		});
	}
	for (let i = n; i < 2 * n; i++) {
		const here =
			tangent[(i + HALF_WINDOW) % n] - tangent[(i - HALF_WINDOW) % n] + 2 * HALF_WINDOW * STEP * DEG;
		if (here < LEAST_CORNER_DEG || !isGreatest(turning, i)) continue;
		if (spans.some(({ low, high }) => wrap(i - low) <= high - low)) continue;
		found.push({
			direction_deg: (i - n) * STEP * DEG,
			turning_deg: here,
			raised: false,
			excess_deg: 0,
			width_deg: 0,
			between: null,
			prominence: logRadius[i - n] - broadly(logRadius, i - n),
		});
	}
	return found;
}

/** Angle between two directions, degrees 0 .. 180. */
export const apart = (a_deg: number, b_deg: number): number =>
	Math.abs(((((a_deg - b_deg) % 360) + 540) % 360) - 180);

/** The outline smoothed broadly, at one place. */
function broadly(logRadius: Float64Array, at: number): number {
	const n = DIRECTIONS;
	let sum = 0;
	let weights = 0;
	for (let j = -3 * BROAD; j <= 3 * BROAD; j += 2) {
		const weight = Math.exp(-0.5 * (j / BROAD) ** 2);
		weights += weight;
		sum += weight * logRadius[(at + j + n) % n];
	}
	return sum / weights;
}

function isGreatest(turning: (i: number) => number, i: number): boolean {
	const here = turning(i);
	for (let j = 1; j <= APART; j++) if (turning(i - j) >= here || turning(i + j) > here) return false;
	return true;
}

/** Where the heading turns back by `least` degrees or more, over three turns round: lows and tops in order. */
function turningPoints(tangent: Float64Array, least: number): { at: number; top: boolean }[] {
	const found: { at: number; top: boolean }[] = [];
	let rising = true;
	let best = 0;
	for (let i = 1; i < 3 * DIRECTIONS; i++) {
		const gain = tangent[i % DIRECTIONS] - tangent[best % DIRECTIONS] + (i - best) * STEP * DEG;
		if (rising ? gain >= 0 : gain <= 0) best = i;
		else if (Math.abs(gain) > least) {
			found.push({ at: best, top: rising });
			rising = !rising;
			best = i;
		}
	}
	return found;
}

/** Where a falling stretch has turned half of its way. */
function halfWay(heading: (i: number) => number, from: number, to: number): number {
	const half = (heading(from) + heading(to)) / 2;
	for (let i = from; i <= to; i++) if (heading(i) <= half) return i;
	return to;
}

/** Highest place over the straight line between two places, in logarithms of the radius. */
function highest(logRadius: Float64Array, from: number, to: number): { at: number; height: number } {
	const n = DIRECTIONS;
	const at = (i: number): number => logRadius[((i % n) + n) % n];
	let best = { at: from, height: 0 };
	for (let i = from; i <= to; i++) {
		const share = (i - from) / Math.max(1, to - from);
		const height = at(i) - (at(from) * (1 - share) + at(to) * share);
		if (height > best.height) best = { at: i, height };
	}
	return best;
}
