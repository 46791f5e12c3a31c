import type { Vec3 } from '../vec3';
import { bounds } from './bounds';
import { planeFrame } from './planeFrame';
import { polygonArea } from './polygonArea';
import { simplifyLoop } from './simplifyLoop';
import type { TriMesh } from './triMesh';

export interface OutlineOptions {
	/** cells along the longer side of the picture that is traced; default 1024 */
	resolution?: number;
	/** how far the simplified outline may leave the traced one, in cells; default 0.5, 0 keeps every point */
	simplify_cells?: number;
}

export interface OutlinePolygon {
	/** x, y pairs: to the right and up as seen, mesh units from the mesh's origin; the last joins the first */
	points: Float64Array;
	/** enclosed area, never negative */
	area: number;
	/** a gap that one can see through */
	hole: boolean;
}

/**
 * Silhouette of a mesh seen along `direction` (from the viewer into the scene) with `up` upwards; largest polygon first,
 * outer ones counter-clockwise. The mesh is drawn into a mask, the mask's edge is smoothed over one cell and traced
 * with straight pieces inside the cells (marching squares), which places it to about a tenth of a cell.
 */
export function outline(
	mesh: TriMesh,
	direction: Vec3,
	up: Vec3,
	options: OutlineOptions = {},
): OutlinePolygon[] {
	const { positions: p, indices } = mesh;
	if (indices.length === 0) return [];
	const { u: upwards, v: right } = planeFrame([0, 0, 0], direction, up);
	const vertices = p.length / 3;
	const x = new Float64Array(vertices);
	const y = new Float64Array(vertices);
	for (let i = 0; i < vertices; i++) {
		x[i] = p[i * 3] * right[0] + p[i * 3 + 1] * right[1] + p[i * 3 + 2] * right[2];
		y[i] = p[i * 3] * upwards[0] + p[i * 3 + 1] * upwards[1] + p[i * 3 + 2] * upwards[2];
	}
	const flat = new Float32Array(vertices * 3);
	for (let i = 0; i < vertices; i++) {
		flat[i * 3] = x[i];
		flat[i * 3 + 1] = y[i];
	}
	const box = bounds({ positions: flat });
	const extent = Math.max(box.max[0] - box.min[0], box.max[1] - box.min[1]);
	if (!(extent > 0)) return [];
	const scale = ((options.resolution ?? 1024) - 6) / extent;
	const width = Math.ceil((box.max[0] - box.min[0]) * scale) + 6;
	const height = Math.ceil((box.max[1] - box.min[1]) * scale) + 6;
	for (let i = 0; i < vertices; i++) {
		x[i] = (x[i] - box.min[0]) * scale + 3;
		y[i] = (y[i] - box.min[1]) * scale + 3;
	}
	const mask = new Uint8Array(width * height);
	for (let k = 0; k < indices.length; k += 3)
		fill(mask, width, x, y, indices[k], indices[k + 1], indices[k + 2]);

	const polygons: OutlinePolygon[] = [];
	for (const loop of trace(soften(mask, width, height), width, height)) {
		const simple = simplifyLoop(loop, options.simplify_cells ?? 0.5);
		const points = new Float64Array(simple.length);
		for (let i = 0; i < simple.length; i += 2) {
			points[i] = (simple[i] - 3) / scale + box.min[0];
			points[i + 1] = (simple[i + 1] - 3) / scale + box.min[1];
		}
		const area = polygonArea(points);
		if (area !== 0) polygons.push({ points, area: Math.abs(area), hole: area < 0 });
	}
	return polygons.sort((a, b) => b.area - a.area);
}

function fill(
	mask: Uint8Array,
	width: number,
	x: Float64Array,
	y: Float64Array,
	a: number,
	b: number,
	c: number,
): void {
	const area = (x[b] - x[a]) * (y[c] - y[a]) - (y[b] - y[a]) * (x[c] - x[a]);
	if (area === 0) return;
	const x0 = Math.ceil(Math.min(x[a], x[b], x[c]) - 0.5);
	const x1 = Math.floor(Math.max(x[a], x[b], x[c]) - 0.5);
	const y0 = Math.ceil(Math.min(y[a], y[b], y[c]) - 0.5);
	const y1 = Math.floor(Math.max(y[a], y[b], y[c]) - 0.5);
	for (let j = y0; j <= y1; j++) {
		for (let i = x0; i <= x1; i++) {
			const px = i + 0.5 - x[a];
			const py = j + 0.5 - y[a];
			const wb = (px * (y[c] - y[a]) - py * (x[c] - x[a])) / area;
			const wc = (py * (x[b] - x[a]) - px * (y[b] - y[a])) / area;
			if (wb >= -1e-9 && wc >= -1e-9 && wb + wc <= 1 + 1e-9) mask[j * width + i] = 1;
		}
	}
}

/** 1-4-6-4-1 smoothing both ways, 256 = fully inside. */
function soften(mask: Uint8Array, width: number, height: number): Float32Array {
	const rows = new Float32Array(width * height);
	const out = new Float32Array(width * height);
	for (let j = 0; j < height; j++) {
		for (let i = 2; i < width - 2; i++) {
			const k = j * width + i;
			rows[k] = mask[k - 2] + mask[k + 2] + 4 * (mask[k - 1] + mask[k + 1]) + 6 * mask[k];
		}
	}
	for (let j = 2; j < height - 2; j++) {
		for (let i = 0; i < width; i++) {
			const k = j * width + i;
			out[k] =
				rows[k - 2 * width] + rows[k + 2 * width] + 4 * (rows[k - width] + rows[k + width]) + 6 * rows[k];
		}
	}
	return out;
}

/** Lines at half height through the grid of cell centres, joined to loops with the inside on their left. */
function trace(field: Float32Array, width: number, height: number): Float64Array[] {
	const level = 128;
	/** where the line that enters a grid edge leaves: edges are numbered 2 * cell (to the right) and 2 * cell + 1 (up) */
	const next = new Map<number, number>();
	const side = (i: number, j: number): number => (field[j * width + i] > level ? 1 : 0);
	for (let j = 0; j + 1 < height; j++) {
		for (let i = 0; i + 1 < width; i++) {
			const kind = side(i, j) | (side(i + 1, j) << 1) | (side(i + 1, j + 1) << 2) | (side(i, j + 1) << 3);
			if (kind === 0 || kind === 15) continue;
			const cell = j * width + i;
			const bottom = 2 * cell;
			const left = 2 * cell + 1;
			const right = 2 * (cell + 1) + 1;
			const top = 2 * (cell + width);
			const middle =
				field[cell] + field[cell + 1] + field[cell + width] + field[cell + width + 1] > 4 * level;
			// walking with the inside on the left
			switch (kind) {
				case 1: next.set(bottom, left); break; // prettier-ignore
				case 2: next.set(right, bottom); break; // prettier-ignore
				case 3: next.set(right, left); break; // prettier-ignore
				case 4: next.set(top, right); break; // prettier-ignore
				case 6: next.set(top, bottom); break; // prettier-ignore
				case 7: next.set(top, left); break; // prettier-ignore
				case 8: next.set(left, top); break; // prettier-ignore
				case 9: next.set(bottom, top); break; // prettier-ignore
				case 11: next.set(right, top); break; // prettier-ignore
				case 12: next.set(left, right); break; // prettier-ignore
				case 13: next.set(bottom, right); break; // prettier-ignore
				case 14: next.set(left, bottom); break; // prettier-ignore
				case 5: // lower left and upper right inside
					next.set(bottom, middle ? right : left).set(top, middle ? left : right);
					break;
				case 10: // lower right and upper left inside
					next.set(right, middle ? top : bottom).set(left, middle ? bottom : top);
					break;
			}
		}
	}
	const loops: Float64Array[] = [];
	for (const start of next.keys()) {
		if (!next.has(start)) continue;
		const points: number[] = [];
		let edge: number | undefined = start;
		while (edge !== undefined && next.has(edge)) {
			const cell = edge >> 1;
			const other = edge & 1 ? cell + width : cell + 1;
			const t = (level - field[cell]) / (field[other] - field[cell]);
			const i = cell % width;
			const j = Math.floor(cell / width);
			points.push(i + 0.5 + (edge & 1 ? 0 : t), j + 0.5 + (edge & 1 ? t : 0));
			const to: number = next.get(edge)!;
			next.delete(edge);
			edge = to;
		}
		if (points.length >= 6) loops.push(Float64Array.from(points));
	}
	return loops;
}
