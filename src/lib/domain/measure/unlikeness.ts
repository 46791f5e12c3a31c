import type { CrownMeasures } from './crownMeasures';

/**
 * How unlike two crowns are in shape, whatever their size: 0 = the same slenderness (CHR) and roundness
 * (CBR); 1 = one of them is e times as slender. Ratios are compared by their logarithms, so that the
 * order of the two does not matter. A measure of ours for choosing teeth to lay side by side.
 */
export function unlikeness(a: CrownMeasures, b: CrownMeasures): number {
	return Math.hypot(
		Math.log(a.crownHeightRatio / b.crownHeightRatio),
		Math.log(a.crownBaseRatio / b.crownBaseRatio),
	);
}
