import { bounds } from './bounds';
import { halfSphereDirections } from './halfSphereDirections';
import { planeFrame } from './planeFrame';
import type { TriMesh } from './triMesh';
import { vertexNormals } from './vertexNormals';

export interface OcclusionOptions {
	/** directions over the whole sphere, an even number; default 96 */
	directions?: number;
	/** side of the depth maps, cells; default 192 */
	resolution?: number;
}

/** a vertex counts as seen when no more than this many cells of the map lie in front of it */
const BIAS_CELLS = 1.6;

/**
 * Ambient occlusion per vertex, 0 (no light from anywhere) .. 1 (open sky), weighted by the cosine to the normal.
 *
 * From each of many directions the mesh is drawn into a depth map, and vertices behind the map's surface count as
 * hidden. One map serves a direction and its opposite (nearest and farthest depth), so 96 directions cost 48 maps.
 * The same mesh gives the same numbers on every machine.
 */
export function occlusion(mesh: TriMesh, options: OcclusionOptions = {}): Float32Array {
	const { positions: p, indices } = mesh;
	const vertices = p.length / 3;
	const side = options.resolution ?? 192;
	const box = bounds(mesh);
	const normal = vertexNormals(mesh);
	const seen = new Float64Array(vertices);
	const possible = new Float64Array(vertices);
	const x = new Float32Array(vertices);
	const y = new Float32Array(vertices);
	const z = new Float32Array(vertices);
	const near = new Float32Array(side * side);
	const far = new Float32Array(side * side);
	const centre = [0, 1, 2].map((k) => (box.min[k] + box.max[k]) / 2);
	const reach = box.diagonal / 2 || 1;
	const scale = (side / 2 - 1.5) / reach;
	const bias = BIAS_CELLS / scale;

	for (const d of halfSphereDirections((options.directions ?? 96) / 2)) {
		const { u, v } = planeFrame([0, 0, 0], d);
		for (let i = 0; i < vertices; i++) {
			const px = p[i * 3] - centre[0];
			const py = p[i * 3 + 1] - centre[1];
			const pz = p[i * 3 + 2] - centre[2];
			x[i] = (px * u[0] + py * u[1] + pz * u[2]) * scale + side / 2;
			y[i] = (px * v[0] + py * v[1] + pz * v[2]) * scale + side / 2;
			z[i] = px * d[0] + py * d[1] + pz * d[2];
		}
		near.fill(-Infinity);
		far.fill(Infinity);
		for (let k = 0; k < indices.length; k += 3) {
			drawDepth(x, y, z, indices[k], indices[k + 1], indices[k + 2], near, far, side);
		}
		for (let i = 0; i < vertices; i++) {
			const facing = normal[i * 3] * d[0] + normal[i * 3 + 1] * d[1] + normal[i * 3 + 2] * d[2];
			const weight = Math.abs(facing);
			possible[i] += weight;
			const cell = Math.floor(y[i]) * side + Math.floor(x[i]);
			// steep surfaces change depth within one cell: allow for it
			const slack = bias * (1 + 1 / Math.max(0.15, weight));
			if (facing > 0 ? z[i] >= near[cell] - slack : z[i] <= far[cell] + slack) seen[i] += weight;
		}
	}
	return Float32Array.from(seen, (s, i) => (possible[i] > 0 ? s / possible[i] : 1));
}

function drawDepth(
	x: Float32Array,
	y: Float32Array,
	z: Float32Array,
	a: number,
	b: number,
	c: number,
	near: Float32Array,
	far: Float32Array,
	side: number,
): void {
	const ax = x[a];
	const ay = y[a];
	const bx = x[b];
	const by = y[b];
	const cx = x[c];
	const cy = y[c];
	const area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
	if (area === 0) return;
	const x0 = Math.max(0, Math.ceil(Math.min(ax, bx, cx) - 0.5));
	const x1 = Math.min(side - 1, Math.floor(Math.max(ax, bx, cx) - 0.5));
	const y0 = Math.max(0, Math.ceil(Math.min(ay, by, cy) - 0.5));
	const y1 = Math.min(side - 1, Math.floor(Math.max(ay, by, cy) - 0.5));
	if (x0 > x1 || y0 > y1) return;
	const inv = 1 / area;
	// weights of b and c change evenly along a row
	const stepB = (cy - ay) * inv;
	const stepC = (ay - by) * inv;
	const az = z[a];
	const bz = z[b] - az;
	const cz = z[c] - az;
	for (let j = y0; j <= y1; j++) {
		const py = j + 0.5 - ay;
		const px = x0 + 0.5 - ax;
		let wb = (px * (cy - ay) - py * (cx - ax)) * inv;
		let wc = (py * (bx - ax) - px * (by - ay)) * inv;
		let cell = j * side + x0;
		for (let i = x0; i <= x1; i++, cell++) {
			if (wb >= -1e-6 && wc >= -1e-6 && wb + wc <= 1.000001) {
				const depth = az + wb * bz + wc * cz;
				if (depth > near[cell]) near[cell] = depth;
				if (depth < far[cell]) far[cell] = depth;
			}
			wb += stepB;
			wc += stepC;
		}
	}
}
