import earcut from 'earcut';
import type { Section, SectionLoop } from './section';

/** The faces of a cut, filled: holes such as a pulp cavity stay open. */
export interface SectionCap {
	/** x, y pairs along the plane's u and v, mm */
	points: Float32Array;
	/** three point numbers per triangle, counter-clockwise seen from where the plane's normal points */
	indices: Uint32Array;
}

/** Fills the loops of a section with triangles. */
export function capSection(section: Section): SectionCap {
	const points: number[] = [];
	const indices: number[] = [];
	const outers = section.filter(({ hole }) => !hole);
	const holes = section.filter(({ hole }) => hole);
	// each hole belongs to the smallest outer loop round it; loops come largest first
	const round = (hole: SectionLoop) => outers.findLast((outer) => contains(outer.points, hole.points));
	const owners = holes.map(round);
	for (const outer of outers) {
		const flat = Array.from(outer.points);
		const starts: number[] = [];
		holes.forEach((hole, i) => {
			if (owners[i] !== outer) return;
			starts.push(flat.length / 2);
			flat.push(...hole.points);
		});
		const first = points.length / 2;
		const corners = earcut(flat, starts, 2);
		points.push(...flat);
		for (let k = 0; k + 2 < corners.length; k += 3) {
			const [a, b, c] = [corners[k], corners[k + 1], corners[k + 2]];
			const turn =
				(flat[b * 2] - flat[a * 2]) * (flat[c * 2 + 1] - flat[a * 2 + 1]) -
				(flat[b * 2 + 1] - flat[a * 2 + 1]) * (flat[c * 2] - flat[a * 2]);
			indices.push(first + a, first + (turn < 0 ? c : b), first + (turn < 0 ? b : c));
		}
	}
	return { points: Float32Array.from(points), indices: Uint32Array.from(indices) };
}

/** Whether the inner loop's first point lies inside the outer one (crossings of a ray). */
function contains(outer: Float64Array, inner: Float64Array): boolean {
	const [x, y] = inner;
	let odd = false;
	for (let i = 0, j = outer.length - 2; i < outer.length; j = i, i += 2) {
		if (outer[i + 1] > y === outer[j + 1] > y) continue;
		const at = ((outer[j] - outer[i]) * (y - outer[i + 1])) / (outer[j + 1] - outer[i + 1]) + outer[i];
		if (x < at) odd = !odd;
	}
	return odd;
}
