import type { TakerCount } from './itemReport';

/** How often a total came out in rounds of the same questions. */
export interface TotalCount {
	total: number;
	of: number;
	count: number;
}

/**
 * KR-20 of rounds with the same questions, from counts: k/(k-1) (1 - sum pq / s^2), both with divisor N (reliability.ts).
 * `takers` are the counts of those rounds' questions. Null with fewer than ten takers, fewer than two questions, or no
 * spread of totals.
 */
export function roundReliability(
	totals: readonly TotalCount[],
	takers: readonly TakerCount[],
): number | null {
	const n = totals.reduce((sum, { count }) => sum + count, 0);
	const questions = [...new Set(takers.map(({ question }) => question))];
	if (n < 10 || questions.length < 2) return null;
	const mean = totals.reduce((sum, { total, count }) => sum + total * count, 0) / n;
	const s2 = totals.reduce((sum, { total, count }) => sum + count * (total - mean) ** 2, 0) / n;
	if (s2 < 1e-12) return null;
	let pq = 0;
	for (const question of questions) {
		const own = takers.filter((one) => one.question === question);
		const all = own.reduce((sum, { count }) => sum + count, 0);
		const p = own.filter(({ right }) => right).reduce((sum, { count }) => sum + count, 0) / all;
		pq += p * (1 - p);
	}
	const k = questions.length;
	return (k / (k - 1)) * (1 - pq / s2);
}
