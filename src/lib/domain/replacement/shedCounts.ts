/** Days in a year, as everywhere in the sources used. */
export const DAYS_A_YEAR = 365.25;

/** Teeth shed by so many positions in a time, at a constant period: N = P L / T (L and T in the same unit). */
export const shedTeeth = (positions: number, time: number, period: number): number =>
	(positions * time) / period;

/** Teeth that a whole mouth sheds in a year. */
export const shedPerYear = (positions: number, period_d: number): number =>
	shedTeeth(positions, DAYS_A_YEAR, period_d);

/**
 * Generations at one position when the period grows evenly (by the same factor each year) from `first` at the
 * beginning to `last` at the end of a time: G = (1 - exp(-g L)) / (g T0), g = ln(T_L / T0) / L. All in one unit.
 */
export function slowingGenerations(first: number, last: number, time: number): number {
	const growth = Math.log(last / first) / time;
	if (Math.abs(growth * time) < 1e-9) return time / first;
	return -Math.expm1(-growth * time) / (growth * first);
}

/** Growth of the period per day that `Jaw.growth_per_d` asks for. */
export const periodGrowth = (first_d: number, last_d: number, time_d: number): number =>
	Math.log(last_d / first_d) / time_d;

/** Teeth ever begun: those shed, and those in the jaw now with their successors. */
export const formedTeeth = (shed: number, positions: number, successors: number): number =>
	shed + positions * (1 + successors);
