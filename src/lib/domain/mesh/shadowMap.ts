import type { Vec3 } from '../vec3';
import { planeFrame } from './planeFrame';

export interface ShadowMap {
	/** side of a cell of the map, in picture units */
	cell: number;
	/** share of the light that reaches a point given in picture coordinates (x right, y down, z to the viewer), 0 .. 1 */
	lit(x: number, y: number, z: number): number;
}

const SIDE = 384;

/**
 * Depth of the surface as a lamp far away sees it, with edges softened over a few cells.
 *
 * @param points picture coordinates, y down
 * @param towards unit vector to the lamp, y up
 */
export function shadowMap(points: Float32Array, indices: Uint32Array, towards: Vec3): ShadowMap {
	const d: Vec3 = [towards[0], -towards[1], towards[2]];
	const { u, v } = planeFrame([0, 0, 0], d);
	const count = points.length / 3;
	const x = new Float32Array(count);
	const y = new Float32Array(count);
	const z = new Float32Array(count);
	let x0 = Infinity;
	let x1 = -Infinity;
	let y0 = Infinity;
	let y1 = -Infinity;
	for (let i = 0; i < count; i++) {
		const px = points[i * 3];
		const py = points[i * 3 + 1];
		const pz = points[i * 3 + 2];
		x[i] = px * u[0] + py * u[1] + pz * u[2];
		y[i] = px * v[0] + py * v[1] + pz * v[2];
		z[i] = px * d[0] + py * d[1] + pz * d[2];
		x0 = Math.min(x0, x[i]);
		x1 = Math.max(x1, x[i]);
		y0 = Math.min(y0, y[i]);
		y1 = Math.max(y1, y[i]);
	}
	const scale = (SIDE - 6) / Math.max(1e-9, x1 - x0, y1 - y0);
	const depth = new Float32Array(SIDE * SIDE).fill(-Infinity);
	for (let k = 0; k < indices.length; k += 3) {
		const a = indices[k];
		const b = indices[k + 1];
		const c = indices[k + 2];
		const ax = (x[a] - x0) * scale + 3;
		const ay = (y[a] - y0) * scale + 3;
		const bx = (x[b] - x[a]) * scale;
		const by = (y[b] - y[a]) * scale;
		const cx = (x[c] - x[a]) * scale;
		const cy = (y[c] - y[a]) * scale;
		const area = bx * cy - by * cx;
		if (area === 0) continue;
		const i0 = Math.max(0, Math.ceil(ax + Math.min(0, bx, cx) - 0.5));
		const i1 = Math.min(SIDE - 1, Math.floor(ax + Math.max(0, bx, cx) - 0.5));
		const j0 = Math.max(0, Math.ceil(ay + Math.min(0, by, cy) - 0.5));
		const j1 = Math.min(SIDE - 1, Math.floor(ay + Math.max(0, by, cy) - 0.5));
		for (let j = j0; j <= j1; j++) {
			for (let i = i0; i <= i1; i++) {
				const px = i + 0.5 - ax;
				const py = j + 0.5 - ay;
				const wb = (px * cy - py * cx) / area;
				const wc = (py * bx - px * by) / area;
				if (wb < -1e-6 || wc < -1e-6 || wb + wc > 1.000001) continue;
				const t = z[a] + wb * (z[b] - z[a]) + wc * (z[c] - z[a]);
				if (t > depth[j * SIDE + i]) depth[j * SIDE + i] = t;
			}
		}
	}
	const cell = 1 / scale;
	return {
		cell,
		lit(px, py, pz) {
			const i = (px * u[0] + py * u[1] + pz * u[2] - x0) * scale + 3;
			const j = (px * v[0] + py * v[1] + pz * v[2] - y0) * scale + 3;
			const t = px * d[0] + py * d[1] + pz * d[2];
			let hidden = 0;
			let asked = 0;
			for (let dj = -2; dj <= 2; dj++) {
				for (let di = -2; di <= 2; di++) {
					const ci = Math.floor(i + di * 1.3);
					const cj = Math.floor(j + dj * 1.3);
					if (ci < 0 || cj < 0 || ci >= SIDE || cj >= SIDE) continue;
					asked++;
					// a point is in shade softly: fully once it lies ten cells behind what the lamp sees
					const behind = (depth[cj * SIDE + ci] - t) / cell - 2.5;
					if (behind > 0) hidden += Math.min(1, behind / 6);
				}
			}
			return asked > 0 ? 1 - hidden / asked : 1;
		},
	};
}
