import type { TriMesh } from '../mesh/triMesh';
import type { Vec3 } from '../vec3';

/** Unit normal (x, y, z per triangle; zeros where there is none) and area of every triangle. */
export interface FacePlanes {
	normals: Float32Array;
	area: Float64Array;
}

/** Which patch has taken each triangle: its number, or 0. */
export interface Taken {
	owner: Uint32Array;
	last: number;
}

/** Triangles of a patch face within this angle of its first one, degrees. */
const WITHIN_DEG = 1;
/** and their corners lie this near to its plane, over the crown's height */
const WITHIN = 4e-4;
/** Triangles four times nearer than that may face within this angle: rounding tilts small ones. */
const WITHIN_TINY_DEG = 20;
/** Slivers (area over the square of the longest edge) have no normal worth the name: only their corners count. */
const SLIVER = 0.02;

/**
 * Grows a flat patch from one triangle over its neighbours: in the plane of that triangle over what no other patch has taken,
 * so that all patches of a mesh take time in proportion to its triangles; or in a given plane, over all.
 */
export function flatPatch(
	mesh: TriMesh,
	twin: Int32Array,
	{ normals, area }: FacePlanes,
	seed: number,
	height_mm: number,
	taken: Taken,
	plane?: { point: Vec3; normal: Vec3 },
): { triangles: number[]; area: number } {
	const { indices, positions: p } = mesh;
	const [nx, ny, nz] = plane?.normal ?? [normals[seed * 3], normals[seed * 3 + 1], normals[seed * 3 + 2]];
	const v = indices[seed * 3] * 3;
	const [x, y, z] = plane?.point ?? [p[v], p[v + 1], p[v + 2]];
	const level = x * nx + y * ny + z * nz;
	const within = WITHIN * height_mm;
	const cosine = Math.cos((WITHIN_DEG * Math.PI) / 180);

	const cosineTiny = Math.cos((WITHIN_TINY_DEG * Math.PI) / 180);

	const belongs = (t: number): boolean => {
		let longest = 0;
		let off = 0;
		for (let k = t * 3; k < t * 3 + 3; k++) {
			const a = indices[k] * 3;
			off = Math.max(off, Math.abs(p[a] * nx + p[a + 1] * ny + p[a + 2] * nz - level));
			if (off > within) return false;
			const b = indices[k % 3 === 2 ? k - 2 : k + 1] * 3;
			longest = Math.max(
				longest,
				(p[b] - p[a]) ** 2 + (p[b + 1] - p[a + 1]) ** 2 + (p[b + 2] - p[a + 2]) ** 2,
			);
		}
		if (area[t] < SLIVER * longest) return true;
		const facing = normals[t * 3] * nx + normals[t * 3 + 1] * ny + normals[t * 3 + 2] * nz;
		return facing >= cosine || (facing >= cosineTiny && off < within / 4);
	};

	const mark = ++taken.last;
	const { owner } = taken;
	const triangles = [seed];
	let total = area[seed];
	owner[seed] = mark;
	for (let i = 0; i < triangles.length; i++) {
		for (let k = triangles[i] * 3; k < triangles[i] * 3 + 3; k++) {
			if (twin[k] < 0) continue;
			const next = (twin[k] / 3) | 0;
			if (owner[next] === mark || (!plane && owner[next] > 0) || !belongs(next)) continue;
			owner[next] = mark;
			triangles.push(next);
			total += area[next];
		}
	}
	return { triangles, area: total };
}
