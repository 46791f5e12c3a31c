import type { HalfSpace } from '../mesh/clipHalfSpace';
import type { TriMesh } from '../mesh/triMesh';
import type { Vec3 } from '../vec3';
import { boxAngle, type CrownShape } from './crownShape';
import type { FacetForm, Side, ToothForm } from './form';
import type { Point2 } from './sectionOutline';
import { angleBetween } from './smooth';

const OUTWARD: Readonly<Record<Side, Vec3>> = {
	distal: [1, 0, 0],
	mesial: [-1, 0, 0],
	labial: [0, 0, 1],
	lingual: [0, 0, -1],
};

/** Heights up to this fraction of the crown's belong to its base. */
const BASE = 5e-4;

/**
 * The plane of a facet: it passes `depth_mm` inside the surface at the facet's centre height (measured straight in
 * from the side) and leans over the tip by `angle_deg` from the tooth's long axis (y).
 * `least_deg` is the smallest angle at which the plane stays clear of everything below the crown's base.
 */
export function facetPlane(
	facet: FacetForm,
	form: ToothForm,
	shape: CrownShape,
	mesh: TriMesh,
): { half: HalfSpace; least_deg: number } {
	const out = OUTWARD[facet.side];
	const arc = Math.min(shape.length_mm * 0.999, shape.line.heightToArc(facet.at * form.crownHeight_mm));
	const { centre, distal, labial } = shape.line.at(arc);
	const [x, z] = surfaceTowards(facet.side, form, shape, shape.length_mm - arc);
	const surface = [0, 1, 2].map((k) => centre[k] + x * distal[k] + z * labial[k]);
	const point: Vec3 = [
		surface[0] - out[0] * facet.depth_mm,
		surface[1],
		surface[2] - out[2] * facet.depth_mm,
	];
	const angle = (facet.angle_deg * Math.PI) / 180;
	const normal: Vec3 = [out[0] * Math.cos(angle), Math.sin(angle), out[2] * Math.cos(angle)];
	const reachAtPoint = point[0] * out[0] + point[2] * out[2];

	let steepest = 0;
	const { positions } = mesh;
	for (let i = 0; i < positions.length; i += 3) {
		if (positions[i + 1] > BASE * form.crownHeight_mm) continue;
		const beyond = positions[i] * out[0] + positions[i + 2] * out[2] - reachAtPoint;
		steepest = Math.max(steepest, beyond / (point[1] - positions[i + 1]));
	}
	return {
		half: { normal, offset_mm: normal[0] * point[0] + normal[1] * point[1] + normal[2] * point[2] },
		least_deg: (Math.atan(steepest) * 180) / Math.PI,
	};
}

/** Section point that lies straight towards a side, mm. */
function surfaceTowards(side: Side, form: ToothForm, shape: CrownShape, u_mm: number): Point2 {
	const towards = boxAngle(side, form);
	const off = ([x, z]: Point2): number =>
		Math.abs(angleBetween(Math.atan2(z / form.baseWidth_mm, x / form.baseLength_mm), towards));
	return shape.columns
		.map((_, j) => shape.sectionPoint(j, u_mm))
		.reduce((best, point) => (off(point) < off(best) ? point : best));
}
