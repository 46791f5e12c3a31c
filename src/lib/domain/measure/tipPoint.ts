import type { PlaneFrame } from '../mesh/section';
import type { SectionValues } from '../mesh/sectionMeasure';
import type { TriMesh } from '../mesh/triMesh';
import { vec3, type Vec3 } from '../vec3';

/**
 * Middle of the rounded tip: the vertex near the apex that lies farthest the way the crown points up there. On a bent
 * crown it is not the highest one.
 *
 * @param below section at 0.8 of axial height; without one the apex itself is the answer
 */
export function tipPoint(
	mesh: TriMesh,
	frame: PlaneFrame,
	apex: Vec3,
	reach_mm: number,
	below: SectionValues | null,
): Vec3 {
	if (!below) return apex;
	const high = vec3.dot(vec3.subtract(apex, frame.origin), frame.normal) * 0.8;
	const [x, y] = below.centroid;
	const from = vec3.add(
		vec3.add(frame.origin, vec3.scale(frame.normal, high)),
		vec3.add(vec3.scale(frame.u, x), vec3.scale(frame.v, y)),
	);
	const p = mesh.positions;
	let best = apex;
	// the second look starts from a better direction
	for (let round = 0; round < 2; round++) {
		const towards = vec3.subtract(best, from);
		let most = -Infinity;
		for (let i = 0; i < p.length; i += 3) {
			const dx = p[i] - apex[0];
			const dy = p[i + 1] - apex[1];
			const dz = p[i + 2] - apex[2];
			if (dx * dx + dy * dy + dz * dz > reach_mm * reach_mm) continue;
			const ahead = dx * towards[0] + dy * towards[1] + dz * towards[2];
			if (ahead <= most) continue;
			most = ahead;
			best = [p[i], p[i + 1], p[i + 2]];
		}
	}
	return best;
}
