import type { Vec3 } from '../vec3';
import { bounds } from './bounds';
import type { TriMesh } from './triMesh';

/**
 * Signed volume inside the surface, mesh units cubed: positive when the triangles face outwards.
 *
 * Sum of tetrahedra from `from` to each triangle (divergence theorem). The mesh is centred first so that a tooth
 * far from the origin loses no digits. For a mesh with one flat opening, put `from` on the opening's plane:
 * the missing lid then adds nothing and the volume is that of the capped mesh.
 */
export function volume(mesh: TriMesh, from?: Vec3): number {
	const { positions: p, indices } = mesh;
	const box = bounds(mesh);
	const ox = from ? from[0] : (box.min[0] + box.max[0]) / 2;
	const oy = from ? from[1] : (box.min[1] + box.max[1]) / 2;
	const oz = from ? from[2] : (box.min[2] + box.max[2]) / 2;
	let sum = 0;
	for (let i = 0; i < indices.length; i += 3) {
		const a = indices[i] * 3;
		const b = indices[i + 1] * 3;
		const c = indices[i + 2] * 3;
		const ax = p[a] - ox;
		const ay = p[a + 1] - oy;
		const az = p[a + 2] - oz;
		const bx = p[b] - ox;
		const by = p[b + 1] - oy;
		const bz = p[b + 2] - oz;
		const cx = p[c] - ox;
		const cy = p[c + 1] - oy;
		const cz = p[c + 2] - oz;
		sum += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
	}
	return sum / 6;
}
