import type { TriMesh } from '../../domain/mesh/triMesh';

/** Below this, a few triangles may be a cut-out sheet. */
const FEW_TRIANGLES = 1000;
/** Points nearer than this share of the mesh's size count as one. */
const CELL = 2e-5;
/** About one place in so many is looked at. */
const EVERY = 61;
/** Fewer corners than this at a point, on average: a closed surface has six, separate triangles one. */
const LEAST_CORNERS = 3;

/**
 * Whether a mesh, welded or not, is mere loose triangles. Nothing can be measured on them, and joining their borders
 * would take minutes and gigabytes. Counts how many corners meet at each point of an even sample of places.
 *
 * @param size length of the bounding box's diagonal
 */
export function isLoose({ positions: p, indices }: TriMesh, size: number): boolean {
	if (indices.length / 3 <= FEW_TRIANGLES) return false;
	const cell = CELL * size;
	const points = new Set<string>();
	let corners = 0;
	for (let k = 0; k < indices.length; k++) {
		const at = indices[k] * 3;
		const x = Math.round(p[at] / cell);
		const y = Math.round(p[at + 1] / cell);
		const z = Math.round(p[at + 2] / cell);
		const hash = Math.imul(x | 0, 73856093) ^ Math.imul(y | 0, 19349663) ^ Math.imul(z | 0, 83492791);
		if ((Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d) >>> 4) % EVERY !== 0) continue;
		corners++;
		points.add(`${x},${y},${z}`);
	}
	return corners < LEAST_CORNERS * points.size;
}
