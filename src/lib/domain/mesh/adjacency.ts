import type { TriMesh } from './triMesh';

export interface Adjacency {
	/**
	 * For corner k of `indices`, the half-edge from corner k to the next corner of its triangle:
	 * the half-edge of the neighbouring triangle along the same edge, or -1 on a border.
	 */
	twin: Int32Array;
	edges: number;
	boundaryEdges: number;
	/** edges with more than two triangles */
	nonManifoldEdges: number;
	/** pairs of neighbours that run along their common edge the same way, so that one of them is turned over */
	flippedEdges: number;
}

/** Which triangle meets which along every edge; the mesh must be welded. Linear in the number of triangles. */
export function adjacency(mesh: TriMesh): Adjacency {
	const { indices } = mesh;
	const half = indices.length;
	const tableSize = 2 ** Math.ceil(Math.log2(Math.max(16, half * 1.5)));
	const mask = tableSize - 1;
	const slots = new Int32Array(tableSize).fill(-1);
	const twin = new Int32Array(half).fill(-1);
	/** 1 = the edge of this table slot has been seen by two triangles or more */
	const paired = new Uint8Array(tableSize);
	let edges = 0;
	let nonManifoldEdges = 0;
	let flippedEdges = 0;
	let boundaryEdges = 0;
	for (let h = 0; h < half; h++) {
		const a = indices[h];
		const b = indices[h % 3 === 2 ? h - 2 : h + 1];
		const lo = a < b ? a : b;
		const hi = a < b ? b : a;
		let slot = (Math.imul(lo, 0x9e3779b1) ^ Math.imul(hi, 0x85ebca6b)) >>> 0;
		slot = (slot ^ (slot >>> 15)) & mask;
		for (;;) {
			const other = slots[slot];
			if (other < 0) {
				slots[slot] = h;
				edges++;
				boundaryEdges++;
				break;
			}
			const oa = indices[other];
			const ob = indices[other % 3 === 2 ? other - 2 : other + 1];
			if ((oa === lo && ob === hi) || (oa === hi && ob === lo)) {
				if (twin[other] < 0) {
					twin[other] = h;
					twin[h] = other;
					boundaryEdges--;
					if (oa === a) flippedEdges++;
					paired[slot] = paired[slot] | 1;
				} else {
					// a third triangle: it waits for a fourth
					if (!(paired[slot] & 2)) nonManifoldEdges++;
					paired[slot] = 3;
					slots[slot] = h;
					boundaryEdges++;
				}
				break;
			}
			slot = (slot + 1) & mask;
		}
	}
	return { twin, edges, boundaryEdges, nonManifoldEdges, flippedEdges };
}
