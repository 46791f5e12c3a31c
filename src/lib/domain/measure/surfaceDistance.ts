import type { TriMesh } from '../mesh/triMesh';
import type { Vec3 } from '../vec3';

/** Distance of a point from the nearest place on a surface, mm; Infinity when it has no triangles. */
export function surfaceDistance({ positions: p, indices }: TriMesh, point: Vec3): number {
	let best = Infinity;
	for (let k = 0; k < indices.length; k += 3) {
		best = Math.min(
			best,
			triangleDistance2(p, indices[k] * 3, indices[k + 1] * 3, indices[k + 2] * 3, point),
		);
	}
	return Math.sqrt(best);
}

/** Squared distance from a triangle: over its inside where the foot of the perpendicular lies there, else from its edges. */
function triangleDistance2(p: Float32Array, a: number, b: number, c: number, q: Vec3): number {
	const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
	const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
	const [wx, wy, wz] = [q[0] - p[a], q[1] - p[a + 1], q[2] - p[a + 2]];
	const uu = ux * ux + uy * uy + uz * uz;
	const uv = ux * vx + uy * vy + uz * vz;
	const vv = vx * vx + vy * vy + vz * vz;
	const wu = wx * ux + wy * uy + wz * uz;
	const wv = wx * vx + wy * vy + wz * vz;
	const det = uu * vv - uv * uv;
	const s = (vv * wu - uv * wv) / det;
	const t = (uu * wv - uv * wu) / det;
	if (det > 0 && s >= 0 && t >= 0 && s + t <= 1) {
		return (wx - s * ux - t * vx) ** 2 + (wy - s * uy - t * vy) ** 2 + (wz - s * uz - t * vz) ** 2;
	}
	return Math.min(edgeDistance2(p, a, b, q), edgeDistance2(p, b, c, q), edgeDistance2(p, c, a, q));
}

function edgeDistance2(p: Float32Array, a: number, b: number, q: Vec3): number {
	const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
	const [wx, wy, wz] = [q[0] - p[a], q[1] - p[a + 1], q[2] - p[a + 2]];
	const uu = ux * ux + uy * uy + uz * uz;
	const s = uu > 0 ? Math.min(1, Math.max(0, (wx * ux + wy * uy + wz * uz) / uu)) : 0;
	return (wx - s * ux) ** 2 + (wy - s * uy) ** 2 + (wz - s * uz) ** 2;
}
