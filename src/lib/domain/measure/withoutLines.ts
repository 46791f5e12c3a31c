import { crests, smoothRound } from './crests';
import { DIRECTIONS } from './polarOutline';

/** Smoothing round the section, directions (one degree). */
const SMOOTH = 2.2;
/** Shallower hollows than this are left, degrees. */
const LEAST_HOLLOW_DEG = 4;

/** Logarithm of an outline's radius with every raised line cut off from the hollow on one side of it to that on the other. */
export function withoutLines(logRadius: Float64Array): Float64Array {
	const smooth = smoothRound(logRadius, SMOOTH);
	const out = Float64Array.from(logRadius);
	for (const { between } of crests(smooth, LEAST_HOLLOW_DEG)) {
		if (!between) continue;
		const [from, to] = between;
		const first = smooth[from];
		const last = smooth[to % DIRECTIONS];
		for (let i = from; i <= to; i++) {
			out[i % DIRECTIONS] = first + ((last - first) * (i - from)) / (to - from);
		}
	}
	return out;
}
