import type { TriMesh } from './triMesh';

/**
 * About `count` of the mesh's triangles, spread evenly over its area: every large triangle and a fair share of the
 * small ones, in their own order. For rough work on a dense scan. A mesh with no more than `count` is returned as it is.
 */
export function sampleTriangles(mesh: TriMesh, count: number): TriMesh {
	const { positions: p, indices } = mesh;
	const triangles = indices.length / 3;
	if (triangles <= count) return mesh;
	const areas = new Float64Array(triangles);
	let total = 0;
	for (let t = 0; t < triangles; t++) {
		const a = indices[t * 3] * 3;
		const b = indices[t * 3 + 1] * 3;
		const c = indices[t * 3 + 2] * 3;
		const ux = p[b] - p[a];
		const uy = p[b + 1] - p[a + 1];
		const uz = p[b + 2] - p[a + 2];
		const vx = p[c] - p[a];
		const vy = p[c + 1] - p[a + 1];
		const vz = p[c + 2] - p[a + 2];
		const x = uy * vz - uz * vy;
		const y = uz * vx - ux * vz;
		const z = ux * vy - uy * vx;
		areas[t] = Math.sqrt(x * x + y * y + z * z);
		total += areas[t];
	}
	const step = total / count;
	const newNumber = new Map<number, number>();
	const positions: number[] = [];
	const kept: number[] = [];
	let sum = step / 2;
	for (let t = 0; t < triangles; t++) {
		sum += areas[t];
		if (sum < step) continue;
		sum %= step;
		for (let k = t * 3; k < t * 3 + 3; k++) {
			let to = newNumber.get(indices[k]);
			if (to === undefined) {
				to = positions.length / 3;
				newNumber.set(indices[k], to);
				positions.push(p[indices[k] * 3], p[indices[k] * 3 + 1], p[indices[k] * 3 + 2]);
			}
			kept.push(to);
		}
	}
	return { positions: Float32Array.from(positions), indices: Uint32Array.from(kept) };
}
