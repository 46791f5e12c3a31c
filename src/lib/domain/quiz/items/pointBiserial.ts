/**
 * r_pb = (M1 - M0) / s x sqrt(p q), s with divisor N; the same as Pearson's r of the item with the totals. Null where
 * everyone or nobody is right, or all totals are the same: r is then undefined, not 0.
 */
export function pointBiserial(rights: readonly boolean[], totals: readonly number[]): number | null {
	if (rights.length !== totals.length) throw new Error('pointBiserial: as many answers as totals');
	const n = totals.length;
	const ones = totals.filter((_, i) => rights[i]);
	const zeros = totals.filter((_, i) => !rights[i]);
	const s = Math.sqrt(variance(totals));
	if (ones.length === 0 || zeros.length === 0 || s === 0) return null;
	const p = ones.length / n;
	return ((mean(ones) - mean(zeros)) / s) * Math.sqrt(p * (1 - p));
}

/** r of the item with the total of all other items (LeBlanc & Cox 2017, Quant. Meth. Psychol. 13:46-56). */
export function correctedItemTotal(rights: readonly boolean[], totals: readonly number[]): number | null {
	return pointBiserial(
		rights,
		totals.map((total, i) => total - (rights[i] ? 1 : 0)),
	);
}

export const mean = (values: readonly number[]): number =>
	values.reduce((sum, value) => sum + value, 0) / values.length;

/** Variance with divisor N. */
export function variance(values: readonly number[]): number {
	if (values.length === 0) return 0;
	const m = mean(values);
	return values.reduce((sum, value) => sum + (value - m) ** 2, 0) / values.length;
}
