/**
 * How well groups are told apart by a trait: textbook statistics of association, on one scale. All lie between 0 (the
 * trait says nothing about the group) and 1 (it says all), and on a trait of two values etaSquared and cramersVSquared
 * are the same number.
 */

/** One value of a trait and the group of the tooth that has it. */
export interface Grouped<T> {
	group: string;
	value: T;
}

/**
 * Share of a number's variance that lies between the groups: SS_between / SS_total.
 * 0 when all values are equal or there are none.
 * Source: the correlation ratio of any textbook on the analysis of variance.
 */
export function etaSquared(data: readonly Grouped<number>[]): number {
	const { total, within } = squares(data);
	return total > 0 ? 1 - within / total : 0;
}

/**
 * The same, corrected for small samples: 1 - (SS_within / (n - k)) / (SS_total / (n - 1)) for n values in k groups, not
 * below 0. Groups of one value each look perfectly apart without telling anything; here they count for nothing.
 * Null when no group has two values (n = k), or all values are equal: the data do not say.
 * Source: Kelley 1935, "An unbiased correlation ratio measure", Proc. Natl. Acad. Sci. 21: 554-559 (epsilon squared).
 */
export function epsilonSquared(data: readonly Grouped<number>[]): number | null {
	const { total, within, groups } = squares(data);
	const n = data.length;
	if (n <= groups || !(total > 0)) return null;
	return Math.max(0, 1 - within / (n - groups) / (total / (n - 1)));
}

function squares(data: readonly Grouped<number>[]): { total: number; within: number; groups: number } {
	const byGroup = new Map<string, number[]>();
	for (const { group, value } of data) {
		const values = byGroup.get(group);
		if (values) values.push(value);
		else byGroup.set(group, [value]);
	}
	let within = 0;
	for (const values of byGroup.values()) within += sumOfSquares(values);
	return { total: sumOfSquares(data.map(({ value }) => value)), within, groups: byGroup.size };
}

/** Sum of squared distances from the mean; equal values give exactly 0. */
function sumOfSquares(values: readonly number[]): number {
	if (values.every((value) => value === values[0])) return 0;
	const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
	return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}

/** Standard deviation of a sample (n - 1); null under two values or when all are equal. */
export function standardDeviation(values: readonly number[]): number | null {
	const sum = sumOfSquares(values);
	return values.length > 1 && sum > 0 ? Math.sqrt(sum / (values.length - 1)) : null;
}

/**
 * Square of Cramer's V between a category and the groups: (chi squared / n) / min(k - 1, r - 1).
 * 0 when there is one category or one group.
 * Source: Cramer 1946, Mathematical Methods of Statistics, ch. 21.
 */
export function cramersVSquared(data: readonly Grouped<string>[]): number {
	const { phi2, groups, categories } = contingency(data);
	const least = Math.min(groups, categories) - 1;
	return least > 0 ? phi2 / least : 0;
}

/**
 * The same, corrected for small samples: phi2' = max(0, phi2 - (k-1)(r-1)/(n-1)), k' = k - (k-1)^2/(n-1), r' likewise;
 * phi2' / min(k' - 1, r' - 1), at most 1. Null when no group has two values, or there is one category or one group.
 * Source: Bergsma 2013, "A bias-correction for Cramer's V and Tschuprow's T", J. Korean Stat. Soc. 42: 323-328.
 */
export function correctedCramersVSquared(data: readonly Grouped<string>[]): number | null {
	const { phi2, groups, categories } = contingency(data);
	const n = data.length;
	if (n <= groups || groups < 2 || categories < 2) return null;
	const corrected = Math.max(0, phi2 - ((groups - 1) * (categories - 1)) / (n - 1));
	const less = (count: number): number => count - (count - 1) ** 2 / (n - 1);
	const least = Math.min(less(groups), less(categories)) - 1;
	return least > 0 ? Math.min(1, corrected / least) : null;
}

/** phi squared = chi squared / n = sum over cells of n_ij^2 / (n_i n_j), less 1 */
function contingency(data: readonly Grouped<string>[]): { phi2: number; groups: number; categories: number } {
	const cells = new Map<string, Map<string, number>>();
	const columns = new Map<string, number>();
	for (const { group, value } of data) {
		const row = cells.get(group) ?? new Map<string, number>();
		cells.set(group, row.set(value, (row.get(value) ?? 0) + 1));
		columns.set(value, (columns.get(value) ?? 0) + 1);
	}
	let sum = 0;
	for (const row of cells.values()) {
		let inRow = 0;
		for (const count of row.values()) inRow += count;
		for (const [value, count] of row) sum += count ** 2 / (inRow * (columns.get(value) ?? 0));
	}
	return { phi2: Math.max(0, sum - 1), groups: cells.size, categories: columns.size };
}
