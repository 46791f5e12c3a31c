import type { Solids } from '../mesh/solids';
import { regionIndex, triangleCount, type TriMesh } from '../mesh/triMesh';
import { opposingMove, opposingPoints, type BiteSetup } from './bite';

/**
 * The same bite with the opposing crown's whole swept solid taken away, so that the facet has its shape: hollow where
 * a round tooth passed. The swept solid is the convex hull of the opposing crown at both ends of its path; a crown that
 * is itself hollow on one side is taken as filled there. Null when nothing is left.
 */
export function wearBySweep(
	tooth: TriMesh,
	opposing: TriMesh,
	setup: BiteSetup,
	solids: Solids,
): TriMesh | null {
	const [high, low] = [topOf(tooth), topOf(opposing)];
	const [shut, open] = [0, 1].map((at) => opposingPoints(opposing, opposingMove(setup, at, high, low)));
	const points = new Float32Array(shut.length + open.length);
	points.set(shut);
	points.set(open, shut.length);
	const swept = solids.hull(points);
	const regions = new Uint8Array(triangleCount(swept)).fill(regionIndex('facet'));
	return solids.subtract(tooth, { ...swept, regions });
}

function topOf({ positions }: TriMesh): number {
	let top = -Infinity;
	for (let i = 1; i < positions.length; i += 3) top = Math.max(top, positions[i]);
	return top;
}
