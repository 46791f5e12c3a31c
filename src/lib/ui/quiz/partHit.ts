import type { PlaneFrame } from '../../domain/mesh/section';
import type { TouchPart } from '../../domain/quiz/question';
import type { StageView, SurfaceHit } from '../../stage/api';
import { featureHit } from '../featureHit';

/** The plane of the crown's base in the tooth frame. */
const BASE: PlaneFrame = { origin: [0, 0, 0], u: [1, 0, 0], v: [0, 0, -1], normal: [0, 1, 0] };

/** At the very tip there is no section: from here up the way leads to the top of the one just below. */
const TIP = 0.97;

/** Where a part lies on the tooth on show; null where the tooth has no section there. */
export function partHit(
	view: Pick<StageView, 'middleAt' | 'outermost'>,
	part: Pick<TouchPart, 'at' | 'where_deg'>,
	crownHeight_mm: number,
): SurfaceHit | null {
	if (part.at < TIP) return featureHit(view, part, crownHeight_mm);
	const middle = view.middleAt(BASE, TIP * crownHeight_mm);
	return middle && view.outermost(middle, [0, 1, 0]);
}

/** A touched place in the words of the quiz: share of crown height, degrees round the section, mm from its middle. */
export function touchedPlace(
	view: StageView,
	{ point: [x, y, z] }: SurfaceHit,
	crownHeight_mm: number,
): { at: number; where_deg: number; radius_mm: number } {
	// at the very tip and under the root there is no section: the nearest one stands for it
	const middle = view.middleAt(BASE, y) ?? view.middleAt(BASE, y * 0.97) ?? [0, y, 0];
	const [dx, dz] = [x - middle[0], z - middle[2]];
	const where_deg = ((Math.atan2(dz, dx) * 180) / Math.PI + 360) % 360;
	return { at: y / crownHeight_mm, where_deg, radius_mm: Math.hypot(dx, dz) };
}
