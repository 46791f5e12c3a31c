import { bounds } from './bounds';
import type { TriMesh } from './triMesh';

export interface WeldOptions {
	/** vertices nearer than this share of the bounding box's diagonal become one; default 1e-6 */
	tolerance?: number;
}

const DEFAULT_TOLERANCE = 1e-6;

/**
 * Merges coincident vertices (a raw STL has three of its own per triangle) and drops the triangles that fall
 * together, as well as vertices that no triangle uses. Regions follow their triangles.
 *
 * A triangle whose three corners stay apart but lie on one line is kept: it has no area, and without it
 * its neighbours would be left with an open edge.
 */
export function weld(mesh: TriMesh, options: WeldOptions = {}): TriMesh {
	return weldWithMap(mesh, options).mesh;
}

/** As `weld`; `to` has the new number of each vertex, -1 for one that was dropped. */
export function weldWithMap(mesh: TriMesh, options: WeldOptions = {}): { mesh: TriMesh; to: Int32Array } {
	const { positions: p, indices, regions } = mesh;
	const count = p.length / 3;
	const box = bounds(mesh);
	const tolerance = Math.max((options.tolerance ?? DEFAULT_TOLERANCE) * box.diagonal, Number.MIN_VALUE);
	const cell = tolerance * 2;
	const tableSize = 2 ** Math.ceil(Math.log2(Math.max(16, count * 2)));
	const mask = tableSize - 1;
	/** first vertex in each hash slot, chained by `next`; slots may be shared by several cells */
	const head = new Int32Array(tableSize).fill(-1);
	const next = new Int32Array(count);
	const sameAs = new Int32Array(count).fill(-1);
	const limit = tolerance * tolerance;

	const slotOf = (x: number, y: number, z: number): number =>
		(Math.imul(x | 0, 73856093) ^ Math.imul(y | 0, 19349663) ^ Math.imul(z | 0, 83492791)) & mask;

	for (let k = 0; k < indices.length; k++) {
		const i = indices[k];
		if (sameAs[i] !== -1) continue;
		const x = p[i * 3];
		const y = p[i * 3 + 1];
		const z = p[i * 3 + 2];
		const fx = (x - box.min[0]) / cell;
		const fy = (y - box.min[1]) / cell;
		const fz = (z - box.min[2]) / cell;
		const cx = Math.floor(fx);
		const cy = Math.floor(fy);
		const cz = Math.floor(fz);
		// everything within the tolerance lies in this cell or in the nearer neighbour along each axis
		const sx = fx - cx < 0.5 ? -1 : 1;
		const sy = fy - cy < 0.5 ? -1 : 1;
		const sz = fz - cz < 0.5 ? -1 : 1;
		let found = -1;
		for (let n = 0; n < 8 && found < 0; n++) {
			const slot = slotOf(cx + (n & 1 ? sx : 0), cy + (n & 2 ? sy : 0), cz + (n & 4 ? sz : 0));
			for (let j = head[slot]; j >= 0; j = next[j]) {
				const dx = p[j * 3] - x;
				const dy = p[j * 3 + 1] - y;
				const dz = p[j * 3 + 2] - z;
				if (dx * dx + dy * dy + dz * dz <= limit) {
					found = j;
					break;
				}
			}
		}
		if (found >= 0) {
			sameAs[i] = found;
			continue;
		}
		sameAs[i] = i;
		const slot = slotOf(cx, cy, cz);
		next[i] = head[slot];
		head[slot] = i;
	}

	const newNumber = new Int32Array(count).fill(-1);
	const keptIndices = new Uint32Array(indices.length);
	const keptRegions = regions ? new Uint8Array(regions.length) : undefined;
	let corners = 0;
	let vertices = 0;
	for (let k = 0; k < indices.length; k += 3) {
		const a = sameAs[indices[k]];
		const b = sameAs[indices[k + 1]];
		const c = sameAs[indices[k + 2]];
		if (a === b || b === c || c === a) continue;
		if (newNumber[a] === -1) newNumber[a] = vertices++;
		if (newNumber[b] === -1) newNumber[b] = vertices++;
		if (newNumber[c] === -1) newNumber[c] = vertices++;
		if (keptRegions) keptRegions[corners / 3] = regions![k / 3];
		keptIndices[corners++] = newNumber[a];
		keptIndices[corners++] = newNumber[b];
		keptIndices[corners++] = newNumber[c];
	}
	const keptPositions = new Float32Array(vertices * 3);
	for (let i = 0; i < count; i++) {
		const to = newNumber[i];
		if (to < 0) continue;
		keptPositions[to * 3] = p[i * 3];
		keptPositions[to * 3 + 1] = p[i * 3 + 1];
		keptPositions[to * 3 + 2] = p[i * 3 + 2];
	}
	const out: TriMesh = { positions: keptPositions, indices: keptIndices.slice(0, corners) };
	const to = sameAs.map((first) => (first < 0 ? -1 : newNumber[first]));
	return { mesh: keptRegions ? { ...out, regions: keptRegions.slice(0, corners / 3) } : out, to };
}
