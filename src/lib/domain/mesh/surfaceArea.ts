import type { TriMesh } from './triMesh';

/** Sum of the triangles' areas, mesh units squared. */
export function surfaceArea(mesh: TriMesh): number {
	const { positions: p, indices } = mesh;
	let sum = 0;
	for (let i = 0; i < indices.length; i += 3) {
		const a = indices[i] * 3;
		const b = indices[i + 1] * 3;
		const c = indices[i + 2] * 3;
		const ux = p[b] - p[a];
		const uy = p[b + 1] - p[a + 1];
		const uz = p[b + 2] - p[a + 2];
		const vx = p[c] - p[a];
		const vy = p[c + 1] - p[a + 1];
		const vz = p[c + 2] - p[a + 2];
		const x = uy * vz - uz * vy;
		const y = uz * vx - ux * vz;
		const z = ux * vy - uy * vx;
		sum += Math.sqrt(x * x + y * y + z * z);
	}
	return sum / 2;
}
