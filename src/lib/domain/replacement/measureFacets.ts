import { planeFrame } from '../mesh/planeFrame';
import { topology } from '../mesh/topology';
import type { TriMesh } from '../mesh/triMesh';
import type { FacetPlace } from '../measure/crownMeasures';
import { wornFacets } from '../measure/wornFacets';
import { weld } from '../mesh/weld';
import type { Vec3 } from '../vec3';

export interface MeasuredFacet {
	area_mm2: number;
	/** angle between the facet and the tooth's long axis, degrees: 0 = upright, 90 = square across */
	angle_deg: number;
	/** unit, outward, tooth frame */
	normal: Vec3;
	where: FacetPlace;
}

/** Flat worn patches of a tooth that stands in its tooth frame (crown's base at y = 0), measured from the mesh alone. */
export function measureFacets(mesh: TriMesh): MeasuredFacet[] {
	const welded = weld(mesh);
	const count = welded.positions.length / 3;
	const heights = new Float64Array(count);
	let top = -Infinity;
	for (let i = 0; i < count; i++) top = Math.max(top, (heights[i] = welded.positions[3 * i + 1]));
	if (!(top > 0)) return [];
	const frame = planeFrame([0, 0, 0], [0, 1, 0], [1, 0, 0]);
	// the frame's v looks to the tongue side
	return wornFacets(welded, topology(welded), frame, top, heights, -1).map(({ area_mm2, normal, where }) => ({
		area_mm2,
		angle_deg: (Math.asin(Math.min(1, Math.max(-1, normal[1]))) * 180) / Math.PI,
		normal,
		where,
	}));
}
