/** Numbers from 1 up to this, not included, are not shown: so few could be traced to a visit. */
export const FEWEST_SHOWN = 5;

/**
 * Counts that belong together, such as the options of one question, with the small ones hidden (null). Where only one is
 * hidden, the total would give it away, so the next smallest goes as well.
 */
export function hideSmall(counts: readonly number[]): (number | null)[] {
	const shown = counts.map((count): number | null => (count > 0 && count < FEWEST_SHOWN ? null : count));
	if (shown.filter((count) => count === null).length !== 1 || counts.length < 2) return shown;
	const left = shown.filter((count): count is number => count !== null && count > 0);
	if (left.length === 0) return shown;
	const next = shown.indexOf(Math.min(...left));
	return shown.map((count, i) => (i === next ? null : count));
}
