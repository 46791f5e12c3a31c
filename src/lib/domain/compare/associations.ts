/**
 * How well groups are told apart by a trait: statistics of association, on one scale. All lie between 0 (the trait says
 * nothing about the group) and 1 (it says all). A trait of two values gives the same number whichever way it is counted:
 * the share of variance of a 0/1 number, the concentration, and the square of Cramer's V are then one (chi squared / n).
 *
 * With more categories Cramer's V is not used: its correction for small samples (Bergsma 2013, J. Korean Stat. Soc. 42:
 * 323-328) gives V^2 = 1/6 to three categories that tell 13 groups of 14 teeth perfectly apart; where there are nearly as
 * many groups as teeth, as in a small museum, categories would then never stand beside numbers.
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
	return corrected(squares(data), data.length);
}

/**
 * Share of a category's variation that lies between the groups, where the variation among n teeth is n (1 - sum p^2),
 * the sum of squares over its categories, each as a 0/1 number. 0 when all values are equal or there are none.
 * Source: Light & Margolin 1971, "An analysis of variance for categorical data", J. Am. Stat. Assoc. 66: 534-544 (R^2),
 * the same as Goodman & Kruskal's tau of 1954.
 */
export function concentration(data: readonly Grouped<string>[]): number {
	const { total, within } = variation(data);
	return total > 0 ? 1 - within / total : 0;
}

/** The same, corrected for small samples as epsilonSquared is, since it is a sum of such squares. Null likewise. */
export function correctedConcentration(data: readonly Grouped<string>[]): number | null {
	return corrected(variation(data), data.length);
}

interface Squares {
	total: number;
	within: number;
	groups: number;
}

function corrected({ total, within, groups }: Squares, n: number): number | null {
	if (n <= groups || !(total > 0)) return null;
	return Math.max(0, 1 - within / (n - groups) / (total / (n - 1)));
}

function squares(data: readonly Grouped<number>[]): Squares {
	const groups = byGroup(data);
	const within = groups.reduce((sum, values) => sum + sumOfSquares(values), 0);
	return { total: sumOfSquares(data.map(({ value }) => value)), within, groups: groups.length };
}

function variation(data: readonly Grouped<string>[]): Squares {
	const groups = byGroup(data);
	const within = groups.reduce((sum, values) => sum + variety(values), 0);
	return { total: variety(data.map(({ value }) => value)), within, groups: groups.length };
}

function byGroup<T>(data: readonly Grouped<T>[]): T[][] {
	const groups = new Map<string, T[]>();
	for (const { group, value } of data) {
		const values = groups.get(group);
		if (values) values.push(value);
		else groups.set(group, [value]);
	}
	return [...groups.values()];
}

/** n (1 - sum p^2); equal values give exactly 0 */
function variety(values: readonly string[]): number {
	const counts = new Map<string, number>();
	for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
	if (counts.size < 2) return 0;
	let sum = 0;
	for (const count of counts.values()) sum += count ** 2;
	return values.length - sum / values.length;
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
