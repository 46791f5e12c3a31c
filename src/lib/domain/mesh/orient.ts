import type { Vec3 } from '../vec3';
import type { TriMesh } from './triMesh';

/** Rows of a 3x3 matrix: row k holds the direction that becomes axis k. */
export type Rows = readonly [Vec3, Vec3, Vec3];

/**
 * Moves a mesh: p' = rows * p + translation. Triangles keep their order; when the matrix mirrors
 * (determinant below 0) their winding is turned so that they still face outwards.
 */
export function orient(mesh: TriMesh, rows: Rows, translation: Vec3 = [0, 0, 0]): TriMesh {
	const [a, b, c] = rows;
	const source = mesh.positions;
	const positions = new Float32Array(source.length);
	for (let i = 0; i < source.length; i += 3) {
		const x = source[i];
		const y = source[i + 1];
		const z = source[i + 2];
		positions[i] = a[0] * x + a[1] * y + a[2] * z + translation[0];
		positions[i + 1] = b[0] * x + b[1] * y + b[2] * z + translation[1];
		positions[i + 2] = c[0] * x + c[1] * y + c[2] * z + translation[2];
	}
	const determinant =
		a[0] * (b[1] * c[2] - b[2] * c[1]) -
		a[1] * (b[0] * c[2] - b[2] * c[0]) +
		a[2] * (b[0] * c[1] - b[1] * c[0]);
	if (determinant >= 0) return { ...mesh, positions };
	const indices = mesh.indices.slice();
	for (let k = 0; k < indices.length; k += 3) {
		const second = indices[k + 1];
		indices[k + 1] = indices[k + 2];
		indices[k + 2] = second;
	}
	return { ...mesh, positions, indices };
}
