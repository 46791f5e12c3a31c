import { mean, variance } from './pointBiserial';

/** Rows = takers, columns = questions, all answered. */
export type Matrix = readonly (readonly boolean[])[];

export const totalsOf = (matrix: Matrix): number[] => matrix.map((row) => row.filter(Boolean).length);

/**
 * KR-20 = k/(k-1) (1 - sum pq / s^2), Kuder & Richardson 1937 (Psychometrika 2:151-160). p q is a variance with divisor N,
 * so s^2 has divisor N as well. May be negative. Null for fewer than two questions or when all totals are the same.
 */
export function kr20(matrix: Matrix): number | null {
	const k = matrix[0]?.length ?? 0;
	const s2 = variance(totalsOf(matrix));
	if (k < 2 || s2 === 0) return null;
	let sum = 0;
	for (let item = 0; item < k; item += 1) {
		const p = matrix.filter((row) => row[item]).length / matrix.length;
		sum += p * (1 - p);
	}
	return (k / (k - 1)) * (1 - sum / s2);
}

/** KR-21 = k/(k-1) (1 - M(k-M)/(k s^2)): as if all questions were equally hard. */
export function kr21(matrix: Matrix): number | null {
	const k = matrix[0]?.length ?? 0;
	const totals = totalsOf(matrix);
	const s2 = variance(totals);
	if (k < 2 || s2 === 0) return null;
	const m = mean(totals);
	return (k / (k - 1)) * (1 - (m * (k - m)) / (k * s2));
}

/** Standard error of measurement, in questions: s sqrt(1 - reliability); null where the reliability is negative. */
export function standardError(totals: readonly number[], reliability: number): number | null {
	return reliability < 0 ? null : Math.sqrt(variance(totals) * (1 - reliability));
}

/** Reliability of a round `times` as long (Spearman 1910; Brown 1910, Brit. J. Psychol. 3). */
export const spearmanBrown = (reliability: number, times: number): number =>
	(times * reliability) / (1 + (times - 1) * reliability);
