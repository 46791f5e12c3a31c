import { polygonMoments } from './polygonMoments';
import type { Section } from './section';

export interface SectionValues {
	/** outer loops minus holes */
	area: number;
	/** of the outer loops */
	perimeter: number;
	/** extent along the frame's u, outer loops */
	length: number;
	/** extent along the frame's v, outer loops */
	width: number;
	/** of the outer loops, in the frame */
	centroid: readonly [number, number];
	/** least and greatest u and v */
	min: readonly [number, number];
	max: readonly [number, number];
	/** every loop closed by itself */
	closed: boolean;
}

/** Figures of a section, or null when the plane missed the mesh. Crumbs below a thousandth of the largest loop are left out. */
export function sectionMeasure(section: Section): SectionValues | null {
	const largest = section[0];
	if (!largest || !(largest.area > 0)) return null;
	let area = 0;
	let outerArea = 0;
	let perimeter = 0;
	let cx = 0;
	let cy = 0;
	let x0 = Infinity;
	let x1 = -Infinity;
	let y0 = Infinity;
	let y1 = -Infinity;
	let closed = true;
	for (const loop of section) {
		if (loop.area < largest.area * 1e-3) continue;
		if (!loop.closed) closed = false;
		if (loop.hole) {
			area -= loop.area;
			continue;
		}
		area += loop.area;
		outerArea += loop.area;
		perimeter += loop.perimeter;
		const { centroid } = polygonMoments(loop.points);
		cx += centroid[0] * loop.area;
		cy += centroid[1] * loop.area;
		for (let i = 0; i < loop.points.length; i += 2) {
			const x = loop.points[i];
			const y = loop.points[i + 1];
			if (x < x0) x0 = x;
			if (x > x1) x1 = x;
			if (y < y0) y0 = y;
			if (y > y1) y1 = y;
		}
	}
	return {
		area,
		perimeter,
		length: x1 - x0,
		width: y1 - y0,
		centroid: [cx / outerArea, cy / outerArea],
		min: [x0, y0],
		max: [x1, y1],
		closed,
	};
}
