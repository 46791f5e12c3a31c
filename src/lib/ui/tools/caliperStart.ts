import { ACROSS } from '../../domain/measure/cutSection';
import type { StageView, SurfaceHit } from '../../stage/api';

/** Heights of the first two ends, shares of the crown's: just under the very tip, just above the base's rim. */
const TIP = 0.97;
const BASE = 0.02;

/**
 * Where a caliper lies at first: from the tip to the back end (distal) of the crown's base, which is how the height
 * of a crown is measured. Null while the view is empty.
 */
export function caliperStart(
	view: Pick<StageView, 'middleAt' | 'outermost' | 'snap'>,
	crownHeight_mm: number,
): [SurfaceHit, SurfaceHit] | null {
	const nearTip = view.middleAt(ACROSS, TIP * crownHeight_mm);
	const nearBase = view.middleAt(ACROSS, BASE * crownHeight_mm);
	const tip = (nearTip && view.outermost(nearTip, [0, 1, 0])) ?? view.snap([0, crownHeight_mm, 0]);
	const base = (nearBase && view.outermost(nearBase, [1, 0, 0])) ?? view.snap([crownHeight_mm, 0, 0]);
	return tip && base ? [tip, base] : null;
}
