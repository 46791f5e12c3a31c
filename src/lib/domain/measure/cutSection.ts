import { heightsAlong, section, type PlaneFrame, type Section } from '../mesh/section';
import { sectionMeasure } from '../mesh/sectionMeasure';
import type { TriMesh } from '../mesh/triMesh';
import type { OutlineShape } from './crownMeasures';
import { outlineShape } from './outlineShape';
import { polarOutline } from './polarOutline';

/** Planes across the tooth frame: u distal, v away from +z, so that the cut is seen from the tip with +z below. */
export const ACROSS: PlaneFrame = { origin: [0, 0, 0], u: [1, 0, 0], v: [0, 0, -1], normal: [0, 1, 0] };

/** A tooth cut across, and its figures as `CrownMeasures.sections` have them. */
export interface CutSection {
	/** above the base of the crown, mm; below 0 in the root */
	height_mm: number;
	/** largest first; x, y pairs along u and v of ACROSS, mm */
	loops: Section;
	/** solid part: holes are taken off */
	area_mm2: number;
	/** of the holes, as of a pulp cavity */
	hollow_mm2: number;
	/** mesiodistal */
	length_mm: number;
	/** labiolingual */
	width_mm: number;
	/** width over length */
	ratio: number;
	/** null where the mesh is too coarse to tell */
	shape: OutlineShape | null;
}

/** Cuts a tooth again and again: null where the plane misses it. */
export type Cutter = (height_mm: number) => CutSection | null;

/** Makes the cutter of a welded mesh in the tooth frame; heights of its vertices are worked out once. */
export function cutSection(mesh: TriMesh): Cutter {
	const heights = heightsAlong(mesh, ACROSS);
	return (height_mm) => {
		const loops = section(mesh, ACROSS, height_mm, heights);
		const values = sectionMeasure(loops);
		if (!values) return null;
		const outline = polarOutline(loops[0].points);
		const crumb = loops[0].area * 1e-3;
		const holes = loops.filter(({ hole, area }) => hole && area >= crumb);
		return {
			height_mm,
			loops,
			area_mm2: values.area,
			hollow_mm2: holes.reduce((sum, { area }) => sum + area, 0),
			length_mm: values.length,
			width_mm: values.width,
			ratio: values.width / values.length,
			shape: outline ? outlineShape(outline) : null,
		};
	};
}
