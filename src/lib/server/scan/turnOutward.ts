import { volume } from '../../domain/mesh/volume';
import type { TriMesh } from '../../domain/mesh/triMesh';
import type { Vec3 } from '../../domain/vec3';

/**
 * Turns all triangles round, in place, when the surface as a whole faces inwards; says whether it did.
 *
 * A closed surface tells by the sign of its volume. An open one is thought closed by a lid: the sum of the triangles'
 * area vectors is the lid's, reversed, and the lid lies at the end of the piece that this vector points away from. Of
 * the two ways to read the surface the one that then encloses more is right.
 */
export function turnOutward(mesh: TriMesh): boolean {
	const lid = areaVector(mesh);
	const length = Math.hypot(...lid.vector);
	const closed = !(length > 1e-4 * lid.area);
	const inside = closed ? volume(mesh) : lidded(mesh, lid.vector, -1) + lidded(mesh, lid.vector, 1);
	if (!(inside < 0)) return false;
	const { indices } = mesh;
	for (let k = 0; k < indices.length; k += 3) {
		const second = indices[k + 1];
		indices[k + 1] = indices[k + 2];
		indices[k + 2] = second;
	}
	return true;
}

/** Volume with a lid at the far end of the piece along `sign` times the vector. */
function lidded(mesh: TriMesh, vector: Vec3, sign: number): number {
	const { positions: p, indices } = mesh;
	let best = -Infinity;
	let at = 0;
	for (let k = 0; k < indices.length; k++) {
		const i = indices[k] * 3;
		const reach = sign * (p[i] * vector[0] + p[i + 1] * vector[1] + p[i + 2] * vector[2]);
		if (reach > best) {
			best = reach;
			at = i;
		}
	}
	return volume(mesh, [p[at], p[at + 1], p[at + 2]]);
}

function areaVector({ positions: p, indices }: TriMesh): { vector: Vec3; area: number } {
	const vector: [number, number, number] = [0, 0, 0];
	let area = 0;
	for (let k = 0; k < indices.length; k += 3) {
		const [a, b, c] = [indices[k] * 3, indices[k + 1] * 3, indices[k + 2] * 3];
		const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
		const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
		const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
		vector[0] += x / 2;
		vector[1] += y / 2;
		vector[2] += z / 2;
		area += Math.hypot(x, y, z) / 2;
	}
	return { vector, area };
}
