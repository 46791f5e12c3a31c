import { weight_N } from './units';

/** A thing that everybody has lifted. */
export interface EverydayThing {
	id: string;
	mass_kg: number;
}

/**
 * The thing whose weight (m g) is nearest to a force by ratio, and how many of them make it: 1 or more where the
 * force is heavier than the heaviest. Null for no force or no things.
 */
export function everydayForce<T extends EverydayThing>(
	force_N: number,
	things: readonly T[],
): { thing: T; times: number } | null {
	if (!(force_N > 0) || !Number.isFinite(force_N) || things.length === 0) return null;
	const off = ({ mass_kg }: T): number => Math.abs(Math.log(force_N / weight_N(mass_kg)));
	const thing = things.reduce((best, one) => (off(one) < off(best) ? one : best));
	return { thing, times: force_N / weight_N(thing.mass_kg) };
}
