import type { FeatureView } from '../content/view';
import type { PlaneFrame } from '../domain/mesh/section';
import type { Vec3 } from '../domain/vec3';
import type { StageView, SurfaceHit } from '../stage/api';

/** The plane of the crown's base in the tooth frame. */
const BASE: PlaneFrame = { origin: [0, 0, 0], u: [1, 0, 0], v: [0, 0, -1], normal: [0, 1, 0] };

/** Above this height a feature is looked at along its surface, as on a worn tip; below it from its side. */
const TIP_FROM = 0.95;

/** The direction from which a marked feature is best seen (tooth frame). */
export function featureFacing(
	{ at, where_deg }: Pick<FeatureView, 'at' | 'where_deg'>,
	hit: SurfaceHit,
): Vec3 {
	if (at >= TIP_FROM) return hit.normal;
	const angle = (where_deg * Math.PI) / 180;
	return [Math.cos(angle), 0, Math.sin(angle)];
}

/**
 * Where a marked feature lies on the surface on show: out from the middle of the section at its height (a
 * fraction of crown height, below 0 on the root), in its direction round the section. Null where the tooth
 * has no section there.
 */
export function featureHit(
	view: Pick<StageView, 'middleAt' | 'outermost'>,
	{ at, where_deg }: Pick<FeatureView, 'at' | 'where_deg'>,
	crownHeight_mm: number,
): SurfaceHit | null {
	const middle = view.middleAt(BASE, at * crownHeight_mm);
	const angle = (where_deg * Math.PI) / 180;
	const outward: Vec3 = [Math.cos(angle), 0, Math.sin(angle)];
	return middle && view.outermost(middle, outward);
}
