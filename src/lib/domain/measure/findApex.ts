import { section, type PlaneFrame } from '../mesh/section';
import { sectionMeasure } from '../mesh/sectionMeasure';
import type { TriMesh } from '../mesh/triMesh';
import { vec3, type Vec3 } from '../vec3';

export interface FoundApex {
	point: Vec3;
	/** along the frame's u and v */
	uv: readonly [number, number];
	/** above the base plane */
	height: number;
}

/**
 * Point of the crown farthest above the base plane. The centres of two thin slices just below the top, carried up to it,
 * give the place: exact for a cone, and the middle of a tip that is worn flat.
 */
export function findApex(mesh: TriMesh, frame: PlaneFrame, heights: Float64Array): FoundApex {
	let top = 0;
	for (let i = 1; i < heights.length; i++) if (heights[i] > heights[top]) top = i;
	const height = heights[top];
	const p = mesh.positions;
	const rel = vec3.subtract([p[top * 3], p[top * 3 + 1], p[top * 3 + 2]], frame.origin);
	let uv: readonly [number, number] = [vec3.dot(rel, frame.u), vec3.dot(rel, frame.v)];
	const upper = sectionMeasure(section(mesh, frame, height * 0.998, heights).slice(0, 1));
	const lower = sectionMeasure(section(mesh, frame, height * 0.996, heights).slice(0, 1));
	if (upper && lower) {
		const u = 2 * upper.centroid[0] - lower.centroid[0];
		const v = 2 * upper.centroid[1] - lower.centroid[1];
		// two tips of one height: the slices belong to one of them, not to the middle
		const reach = Math.max(upper.length, upper.width);
		if (Math.hypot(u - uv[0], v - uv[1]) <= reach) uv = [u, v];
	}
	const point = vec3.add(
		vec3.add(frame.origin, vec3.scale(frame.normal, height)),
		vec3.add(vec3.scale(frame.u, uv[0]), vec3.scale(frame.v, uv[1])),
	);
	return { point, uv, height };
}
