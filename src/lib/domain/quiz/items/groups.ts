/** Upper and lower group of 27 % each: the best trade between size and contrast (Kelley 1939, J. Educ. Psychol. 30:17-24). */
export const GROUP_SHARE = 0.27;

/** Size of each group, a half rounded up. */
export const groupSize = (n: number): number => Math.floor(GROUP_SHARE * n + 0.5);

/**
 * Weight of each taker in the upper and in the lower group. Takers whose totals tie at a cut share the places that are
 * left, so that the order of rows decides nothing.
 */
export function groupWeights(totals: readonly number[]): { upper: number[]; lower: number[]; size: number } {
	const size = groupSize(totals.length);
	return { upper: weights(totals, size, 1), lower: weights(totals, size, -1), size };
}

function weights(totals: readonly number[], size: number, sign: 1 | -1): number[] {
	const sorted = [...totals].sort((a, b) => sign * (b - a));
	if (size === 0) return totals.map(() => 0);
	const cut = sorted[size - 1];
	const beyond = totals.filter((total) => sign * (total - cut) > 0).length;
	const tied = totals.filter((total) => total === cut).length;
	return totals.map((total) => (sign * (total - cut) > 0 ? 1 : total === cut ? (size - beyond) / tied : 0));
}

/** D = (U - L) / n: right answers in the upper group less those in the lower, over the size of a group; null where n = 0. */
export function discrimination(rights: readonly boolean[], totals: readonly number[]): number | null {
	const { upper, lower, size } = groupWeights(totals);
	if (size === 0) return null;
	const sum = (of: readonly number[]): number => rights.reduce((s, right, i) => s + (right ? of[i] : 0), 0);
	return (sum(upper) - sum(lower)) / size;
}

/** D from counts of right answers in two groups of the same size. */
export const discriminationOf = (upper: number, lower: number, size: number): number | null =>
	size > 0 ? (upper - lower) / size : null;

/**
 * What D or r says of a question. Limits: Ebel 1965, Measuring Educational Achievement; below 0 the key is to be checked.
 */
export function reading(d: number): 'very-good' | 'good' | 'revise' | 'poor' | 'check-key' {
	if (d < 0) return 'check-key';
	if (d < 0.2) return 'poor';
	if (d < 0.3) return 'revise';
	return d < 0.4 ? 'good' : 'very-good';
}
