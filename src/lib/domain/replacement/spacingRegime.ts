import { seriesOffset } from './seriesOffset';

/**
 * What every second tooth seems to do. `front-to-back` below z = 2, `alternate` at 2 (a whole series of every second
 * tooth at once), `back-to-front` above (DeMar 1972; agrees with Osborn 1974). `all-together` is z = 1.
 */
export type RegimeName = 'all-together' | 'front-to-back' | 'alternate' | 'back-to-front';

export interface SpacingRegime {
	name: RegimeName;
	/** the rule "below 2 to the back, above 2 to the front" holds only for 4/3 < z < 4 */
	ruleHolds: boolean;
	/** the series (1, 2 or 3) whose teeth are most in step: the one that an eye picks out */
	clearestSeries: 1 | 2 | 3;
}

export function spacingRegime(spacing: number): SpacingRegime {
	const neighbour = seriesOffset(spacing, 1);
	const second = seriesOffset(spacing, 2);
	const name =
		neighbour === 0
			? 'all-together'
			: second === 0
				? 'alternate'
				: second > 0
					? 'front-to-back'
					: 'back-to-front';
	const series = [1, 2, 3] as const;
	const clearestSeries = series.reduce((best, q) =>
		Math.abs(seriesOffset(spacing, q)) < Math.abs(seriesOffset(spacing, best)) - 1e-9 ? q : best,
	);
	return { name, ruleHolds: spacing > 4 / 3 && spacing < 4, clearestSeries };
}
