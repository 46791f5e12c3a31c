import { weight_N } from './units';

/** A thing that everybody has lifted. */
export interface EverydayThing {
	id: string;
	mass_kg: number;
}

/** A thing counts as reached from this share of its weight on. */
const REACHED = 0.95;

/**
 * The heaviest thing whose weight (m g) a force reaches, and how many of them make it; the lightest, and what part of it, where
 * it reaches none. Null for no force or no things.
 */
export function everydayForce<T extends EverydayThing>(
	force_N: number,
	things: readonly T[],
): { thing: T; times: number } | null {
	if (!(force_N > 0) || !Number.isFinite(force_N) || things.length === 0) return null;
	const rising = [...things].sort((a, b) => a.mass_kg - b.mass_kg);
	const reached = rising.findLast(({ mass_kg }) => force_N >= REACHED * weight_N(mass_kg));
	const thing = reached ?? rising[0];
	return { thing, times: force_N / weight_N(thing.mass_kg) };
}
