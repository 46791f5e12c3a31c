/**
 * One row of tooth positions and the clock that replaces its teeth.
 *
 * Positions are counted from 1 at the FRONT (mesial) end. Times are days. A position's cycle runs from the eruption
 * of one tooth (phase 0) to the eruption of the next (phase 1). The model is the standard reading of z-spacing:
 * Edmund 1960 (doi:10.5962/bhl.title.52196), DeMar 1972 (doi:10.1111/j.1558-5646.1972.tb01948.x); the notation is ours.
 */
export interface Jaw {
	/** tooth positions of the row, at least 1 */
	positions: number;
	/** replacement period T at one position, at age `start_d`, days */
	period_d: number;
	/**
	 * z: distance in positions between one series of teeth and the next (z = T / time to advance one position).
	 * One number for the whole row, or one for each step from a position to the next one behind it (positions - 1).
	 */
	spacing: number | readonly number[];
	/** when position 1 erupts its tooth of generation 0, days; default 0 */
	start_d?: number;
	/** growth of the period with age: T(t) = T * exp(growth * (t - start)), per day; default 0 = constant */
	growth_per_d?: number;
	/**
	 * Irregularity for the eye: how far an eruption is shifted, in cycles (see jitterBySeed). No published variance
	 * was found, so a screen must call it an illustration. Default none.
	 */
	jitter?: Jitter;
}

/** Shift of the eruption of a generation at a position, cycles, between -0.45 and 0.45. */
export type Jitter = (position: number, generation: number) => number;

/** Two lags that differ by less than this count as the same, cycles. */
export const SAME_CYCLES = 1e-9;

/** Part of a number behind its whole part, 0 .. 1; rounding noise below 1 becomes 0. */
export function fraction(value: number): number {
	const part = value - Math.floor(value);
	return part > 1 - SAME_CYCLES ? 0 : part;
}
