import { FEWEST_SHOWN, hideSmall } from './hideSmall';

/**
 * Counts of days, small ones hidden (null) so that neither the sum of all days nor the sums of weekdays give one back:
 * as everywhere, and within each group of days that is also told as a sum.
 */
export function hideDays(counts: readonly number[], groups: readonly number[]): (number | null)[] {
	const shown: (number | null)[] = [...counts];
	for (const group of new Set(groups)) {
		const at = counts.flatMap((_, i) => (groups[i] === group ? [i] : []));
		hideSmall(at.map((i) => counts[i])).forEach((count, i) => (shown[at[i]] = count));
	}
	if (shown.filter((count) => count === null).length !== 1) return shown;
	// a group of one day: the sum of all days would give it away
	const left = shown.filter((count): count is number => count !== null && count >= FEWEST_SHOWN);
	if (left.length === 0) return shown;
	const next = shown.indexOf(Math.min(...left));
	return shown.map((count, i) => (i === next ? null : count));
}
