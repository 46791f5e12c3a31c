import { bounds } from '../../domain/mesh/bounds';
import { topology } from '../../domain/mesh/topology';
import type { TriMesh } from '../../domain/mesh/triMesh';
import { vec3, type Vec3 } from '../../domain/vec3';
import { triangulatePolygon } from '../scan/triangulatePolygon';

/** An opening wider than this share of the whole is a part of the piece (a broken base, a pulp cavity). */
const SMALL = 0.12;

/**
 * Closes the small holes that a scanner leaves, for the eye only: measures are taken before, from the
 * surface as it was scanned. Wide openings stay open. A mesh without small holes comes back as it is.
 */
export function closeSmallHoles(mesh: TriMesh): TriMesh {
	const { boundaryLoops } = topology(mesh);
	if (boundaryLoops.length === 0) return mesh;
	const widest = bounds(mesh).diagonal * SMALL;
	const lids: number[] = [];
	for (const loop of boundaryLoops) {
		const points = Array.from(loop, (vertex) => place(mesh, vertex));
		// a rim that touches itself is left alone: a lid on it would not be one surface
		if (loop.length < 3 || new Set(loop).size < loop.length || width(points) > widest) continue;
		// the lid runs round the other way than the surface beside it
		const rim = Array.from(loop).reverse();
		if (rim.length === 3) lids.push(...rim);
		else {
			triangulatePolygon(points.reverse().flat(), rim.length, (a, b, c) => {
				lids.push(rim[a], rim[b], rim[c]);
			});
		}
	}
	if (lids.length === 0) return mesh;
	const indices = new Uint32Array(mesh.indices.length + lids.length);
	indices.set(mesh.indices);
	indices.set(lids, mesh.indices.length);
	return { positions: mesh.positions, indices };
}

const place = ({ positions: p }: TriMesh, vertex: number): Vec3 => [
	p[vertex * 3],
	p[vertex * 3 + 1],
	p[vertex * 3 + 2],
];

/** Twice the distance of the farthest point from the middle. */
function width(points: readonly Vec3[]): number {
	const middle = vec3.scale(
		points.reduce((sum, point) => vec3.add(sum, point), [0, 0, 0]),
		1 / points.length,
	);
	return 2 * points.reduce((most, point) => Math.max(most, vec3.distance(point, middle)), 0);
}
