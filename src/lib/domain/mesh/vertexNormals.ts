import type { TriMesh } from './triMesh';

/** One area-weighted unit normal per vertex (3 numbers each), smooth over every edge; 0, 0, 0 where no triangle meets. */
export function vertexNormals(mesh: TriMesh): Float32Array {
	const { positions: p, indices } = mesh;
	const out = new Float32Array(p.length);
	for (let k = 0; k < indices.length; k += 3) {
		const a = indices[k] * 3;
		const b = indices[k + 1] * 3;
		const c = indices[k + 2] * 3;
		const ux = p[b] - p[a];
		const uy = p[b + 1] - p[a + 1];
		const uz = p[b + 2] - p[a + 2];
		const vx = p[c] - p[a];
		const vy = p[c + 1] - p[a + 1];
		const vz = p[c + 2] - p[a + 2];
		const x = uy * vz - uz * vy;
		const y = uz * vx - ux * vz;
		const z = ux * vy - uy * vx;
		for (const v of [a, b, c]) {
			out[v] += x;
			out[v + 1] += y;
			out[v + 2] += z;
		}
	}
	for (let i = 0; i < out.length; i += 3) {
		const n = Math.sqrt(out[i] * out[i] + out[i + 1] * out[i + 1] + out[i + 2] * out[i + 2]);
		if (!(n > 0)) continue;
		out[i] /= n;
		out[i + 1] /= n;
		out[i + 2] /= n;
	}
	return out;
}
