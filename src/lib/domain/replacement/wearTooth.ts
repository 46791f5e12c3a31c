import { clipHalfSpace, type HalfSpace } from '../mesh/clipHalfSpace';
import type { TriMesh } from '../mesh/triMesh';
import { biteNormal, opposingMove, opposingPoints, type BiteSetup } from './bite';
import { measureFacets, type MeasuredFacet } from './measureFacets';

export interface WornTooth {
	mesh: TriMesh;
	/** whether the opposing tooth touches at all */
	touches: boolean;
	/** flat worn patches as our measuring finds them, largest first */
	facets: MeasuredFacet[];
	/** crown height left over the unworn crown's, 0 .. 1 */
	crownLeft: number;
	/** volume and so on are the caller's; this is the plane of the bite, null while nothing touches */
	plane: HalfSpace | null;
}

export interface WearOptions {
	/** crown height left at the end of wear, over the unworn crown's */
	stumpShare: number;
}

/** Part of the wear in which the side facet reaches its depth; the tip is worn from `TIP_FROM` on. OUR course of wear. */
const SIDE_UNTIL = 0.6;
const TIP_FROM = 0.25;
/** A facet stays this far above the crown's base, over crown height. */
const CLEAR_OF_GUM = 0.1;

/** The plane along which the opposing tooth slides when its whole path is taken: tangent to the swept crown. */
export function bitePlane(standingHeight_mm: number, opposing: TriMesh, setup: BiteSetup): HalfSpace {
	const normal = biteNormal(setup.closing_deg);
	const move = opposingMove(setup, 0, standingHeight_mm, heightOf(opposing));
	const points = opposingPoints(opposing, move);
	let offset_mm = Infinity;
	for (let i = 0; i < points.length; i += 3)
		offset_mm = Math.min(offset_mm, normal[1] * points[i + 1] + normal[2] * points[i + 2]);
	return { normal, offset_mm };
}

/** Spacing at which the two teeth just touch, mm; closer ones wear. Sliders range below it. */
export function touchingSpacing(tooth: TriMesh, opposing: TriMesh, closing_deg: number): number {
	const plane = bitePlane(heightOf(tooth), opposing, { closing_deg, spacing_mm: 0 });
	return (reachOf(tooth, plane, 0, Infinity) - plane.offset_mm) / plane.normal[2];
}

/**
 * Wears a standing tooth (closed mesh, tooth frame) by an opposing one.
 * @param progress 0 = unworn .. 1 = worn to a stump
 */
export function wearTooth(
	tooth: TriMesh,
	opposing: TriMesh,
	setup: BiteSetup,
	progress: number,
	{ stumpShare }: WearOptions,
): WornTooth {
	const high = heightOf(tooth);
	const target = bitePlane(high, opposing, setup);
	const reach = reachOf(tooth, target, 0, Infinity);
	const touches = target.offset_mm < reach;
	// the other tooth never comes down to the gum, so neither does its facet
	const deepest = Math.max(target.offset_mm, reachOf(tooth, target, -Infinity, CLEAR_OF_GUM * high));
	const none: WornTooth = { mesh: tooth, touches, facets: [], crownLeft: 1, plane: null };
	if (!touches || progress <= 0) return none;
	const side = Math.min(1, progress / SIDE_UNTIL);
	const plane = { normal: target.normal, offset_mm: reach + (deepest - reach) * side };
	let mesh = clipHalfSpace(tooth, plane, 'facet');
	const tip = Math.max(0, (progress - TIP_FROM) / (1 - TIP_FROM));
	if (mesh && tip > 0)
		mesh = clipHalfSpace(
			mesh,
			{ normal: [0, 1, 0], offset_mm: high * (1 - (1 - stumpShare) * tip) },
			'facet',
		);
	if (!mesh) return none;
	return { mesh, touches, facets: measureFacets(mesh), crownLeft: heightOf(mesh) / high, plane };
}

function heightOf({ positions }: TriMesh): number {
	let top = -Infinity;
	for (let i = 1; i < positions.length; i += 3) top = Math.max(top, positions[i]);
	return top;
}

/** How far the part between two heights reaches in the plane's direction, mm. */
function reachOf({ positions: p }: TriMesh, { normal }: HalfSpace, from_mm: number, to_mm: number): number {
	let reach = -Infinity;
	for (let i = 0; i < p.length; i += 3)
		if (p[i + 1] >= from_mm && p[i + 1] <= to_mm)
			reach = Math.max(reach, normal[1] * p[i + 1] + normal[2] * p[i + 2]);
	return reach;
}
