import { adjacency, type Adjacency } from './adjacency';
import type { TriMesh } from './triMesh';

export interface Topology extends Adjacency {
	/** pieces of surface joined by edges */
	components: number;
	/** component of each triangle, numbered from 0 */
	componentOf: Uint32Array;
	/** rims of the openings as vertex numbers, longest (by vertices) first */
	boundaryLoops: Uint32Array[];
	/** every edge has a triangle on both sides */
	watertight: boolean;
	/** all neighbours are wound the same way */
	oriented: boolean;
}

/** Edges, openings and pieces of a welded mesh. */
export function topology(mesh: TriMesh): Topology {
	const near = adjacency(mesh);
	const { twin } = near;
	const { indices } = mesh;
	const triangles = indices.length / 3;
	const componentOf = new Uint32Array(triangles);
	const seen = new Uint8Array(triangles);
	const stack = new Uint32Array(triangles);
	let components = 0;
	for (let start = 0; start < triangles; start++) {
		if (seen[start]) continue;
		let top = 0;
		stack[top++] = start;
		seen[start] = 1;
		while (top > 0) {
			const t = stack[--top];
			componentOf[t] = components;
			for (let k = t * 3; k < t * 3 + 3; k++) {
				const other = twin[k];
				if (other < 0) continue;
				const next = (other / 3) | 0;
				if (seen[next]) continue;
				seen[next] = 1;
				stack[top++] = next;
			}
		}
		components++;
	}
	return {
		...near,
		components,
		componentOf,
		boundaryLoops: near.boundaryEdges > 0 ? boundaryLoops(indices, twin) : [],
		watertight: near.boundaryEdges === 0 && triangles > 0,
		oriented: near.flippedEdges === 0,
	};
}

function boundaryLoops(indices: Uint32Array, twin: Int32Array): Uint32Array[] {
	// border edges leaving each vertex; a vertex where two openings touch has more than one
	const leaving = new Map<number, number[]>();
	for (let h = 0; h < twin.length; h++) {
		if (twin[h] >= 0) continue;
		const from = indices[h];
		const list = leaving.get(from);
		if (list) list.push(h);
		else leaving.set(from, [h]);
	}
	const used = new Set<number>();
	const loops: Uint32Array[] = [];
	for (const list of leaving.values()) {
		for (const first of list) {
			if (used.has(first)) continue;
			const loop: number[] = [];
			let h: number | undefined = first;
			while (h !== undefined && !used.has(h)) {
				used.add(h);
				loop.push(indices[h]);
				const to: number = indices[h % 3 === 2 ? h - 2 : h + 1];
				h = leaving.get(to)?.find((candidate) => !used.has(candidate));
			}
			loops.push(Uint32Array.from(loop));
		}
	}
	return loops.sort((a, b) => b.length - a.length);
}
