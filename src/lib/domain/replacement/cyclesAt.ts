import type { Jaw } from './jaw';

/** Cycles that position 1 has run through at time `t_d`: the integral of 1/T from the start. Negative before it. */
export function cyclesAt(jaw: Jaw, t_d: number): number {
	const since = t_d - (jaw.start_d ?? 0);
	const growth = jaw.growth_per_d ?? 0;
	if (growth === 0) return since / jaw.period_d;
	return -Math.expm1(-growth * since) / (growth * jaw.period_d);
}

/** The way back: when position 1 has run through so many cycles, days; Infinity where a slowing clock never gets there. */
export function timeOfCycles(jaw: Jaw, cycles: number): number {
	const start = jaw.start_d ?? 0;
	const growth = jaw.growth_per_d ?? 0;
	if (growth === 0) return start + cycles * jaw.period_d;
	const left = 1 - growth * jaw.period_d * cycles;
	return left > 0 ? start - Math.log(left) / growth : Infinity;
}
