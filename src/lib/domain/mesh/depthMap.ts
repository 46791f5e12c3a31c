import type { DrawingAxes } from './drawingAxes';
import type { TriMesh } from './triMesh';

/** What a parallel view sees first, cell by cell; rows run upwards. */
export interface DepthMap {
	width: number;
	height: number;
	/** side of a cell, mm */
	cell_mm: number;
	/** right and up coordinates of the lower left corner of cell 0, mm */
	origin_mm: readonly [number, number];
	/** towards the viewer, mm; -Infinity where nothing is */
	depth: Float32Array;
	/** triangle seen, -1 for none */
	triangle: Int32Array;
}

/** Free cells round the mesh. */
const BORDER = 4;

/** Depth buffer of a mesh, `resolution` cells along the longer side of what is seen. */
export function depthMap(mesh: TriMesh, axes: DrawingAxes, resolution: number): DepthMap {
	const { positions: p, indices } = mesh;
	const seen = new Float64Array(p.length);
	let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity];
	for (let i = 0; i < p.length; i += 3) {
		const x = p[i] * axes.right[0] + p[i + 1] * axes.right[1] + p[i + 2] * axes.right[2];
		const y = p[i] * axes.up[0] + p[i + 1] * axes.up[1] + p[i + 2] * axes.up[2];
		seen[i] = x;
		seen[i + 1] = y;
		seen[i + 2] = p[i] * axes.towards[0] + p[i + 1] * axes.towards[1] + p[i + 2] * axes.towards[2];
		if (x < x0) x0 = x;
		if (x > x1) x1 = x;
		if (y < y0) y0 = y;
		if (y > y1) y1 = y;
	}
	const extent = Math.max(x1 - x0, y1 - y0);
	if (!(extent > 0)) {
		const nothing = { depth: Float32Array.of(-Infinity), triangle: Int32Array.of(-1) };
		return { width: 1, height: 1, cell_mm: 1, origin_mm: [0, 0], ...nothing };
	}
	const cell_mm = extent / resolution;
	const width = Math.ceil((x1 - x0) / cell_mm) + 2 * BORDER;
	const height = Math.ceil((y1 - y0) / cell_mm) + 2 * BORDER;
	const origin_mm = [x0 - BORDER * cell_mm, y0 - BORDER * cell_mm] as const;
	const depth = new Float32Array(width * height).fill(-Infinity);
	const triangle = new Int32Array(width * height).fill(-1);
	for (let i = 0; i < seen.length; i += 3) {
		seen[i] = (seen[i] - origin_mm[0]) / cell_mm;
		seen[i + 1] = (seen[i + 1] - origin_mm[1]) / cell_mm;
	}
	for (let k = 0; k < indices.length; k += 3) {
		const a = indices[k] * 3;
		const b = indices[k + 1] * 3;
		const c = indices[k + 2] * 3;
		const bx = seen[b] - seen[a];
		const by = seen[b + 1] - seen[a + 1];
		const cx = seen[c] - seen[a];
		const cy = seen[c + 1] - seen[a + 1];
		const area = bx * cy - by * cx;
		if (area === 0) continue;
		const i0 = Math.ceil(seen[a] + Math.min(0, bx, cx) - 0.5);
		const i1 = Math.floor(seen[a] + Math.max(0, bx, cx) - 0.5);
		const j0 = Math.ceil(seen[a + 1] + Math.min(0, by, cy) - 0.5);
		const j1 = Math.floor(seen[a + 1] + Math.max(0, by, cy) - 0.5);
		for (let j = j0; j <= j1; j++) {
			for (let i = i0; i <= i1; i++) {
				const px = i + 0.5 - seen[a];
				const py = j + 0.5 - seen[a + 1];
				const wb = (px * cy - py * cx) / area;
				const wc = (py * bx - px * by) / area;
				if (wb < -1e-6 || wc < -1e-6 || wb + wc > 1.000001) continue;
				const z = seen[a + 2] + wb * (seen[b + 2] - seen[a + 2]) + wc * (seen[c + 2] - seen[a + 2]);
				const at = j * width + i;
				if (z <= depth[at]) continue;
				depth[at] = z;
				triangle[at] = k / 3;
			}
		}
	}
	return { width, height, cell_mm, origin_mm, depth, triangle };
}
