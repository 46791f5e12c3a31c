import { TRAITS, type Trait, type TraitId } from './traits';

/** A number on the scale on which its trait is compared; null for one that has none (the logarithm of 0). */
export function scaled(id: TraitId, value: number): number | null {
	const kind = TRAITS[id];
	if (kind.kind !== 'number' || kind.scale === 'linear') return value;
	return value > 0 ? Math.log(value) : null;
}

/**
 * How far two values of a trait lie apart, 0 .. 1; null when one of them is unknown or they cannot be compared.
 *
 * Numbers: erf(d / 2s) for a distance d on the trait's scale and a standard deviation s: the share of all pairs of teeth
 * that lie closer together than these two, were the trait normally distributed, since the difference of two teeth has
 * the variance 2 s^2. It saturates: 0.52 at one s, 0.84 at two, 0.97 at three.
 * Counts, categories, yes or no: 1 when they differ, 0.5 for categories that pass into each other.
 */
export function apart(a: Trait, b: Trait, spread: number): number | null {
	if (a.value === null || b.value === null) return null;
	const kind = TRAITS[a.id];
	if (kind.kind === 'number') {
		const [x, y] = [scaled(a.id, Number(a.value)), scaled(b.id, Number(b.value))];
		if (x === null || y === null) return null;
		return x === y ? 0 : erf(Math.abs(x - y) / (2 * spread));
	}
	if (a.value === b.value) return 0;
	if (kind.kind !== 'category') return 1;
	const pair = [a.value, b.value];
	// one side of a scan may be the labial or the lingual one
	if (pair.includes('one-side') && !pair.includes('all')) return null;
	return kind.near.some(([one, other]) => pair.includes(one) && pair.includes(other)) ? 0.5 : 1;
}

/** Whether measuring cannot tell two values apart; null when they cannot be compared. */
export function isAlike(a: Trait, b: Trait): boolean | null {
	if (a.value === null || b.value === null) return null;
	const kind = TRAITS[a.id];
	if (kind.kind !== 'number') return apart(a, b, 1) === null ? null : a.value === b.value;
	const [x, y] = [scaled(a.id, Number(a.value)), scaled(b.id, Number(b.value))];
	return x === null || y === null ? null : Math.abs(x - y) <= kind.precision;
}

/**
 * The error function for x >= 0, within 1.5e-7.
 * Source: Abramowitz & Stegun 1964, Handbook of Mathematical Functions, 7.1.26.
 */
export function erf(x: number): number {
	const t = 1 / (1 + 0.3275911 * x);
	const sum = ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t;
	return 1 - sum * Math.exp(-x * x);
}
