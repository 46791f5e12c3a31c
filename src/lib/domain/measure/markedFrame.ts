import { planeFrame } from '../mesh/planeFrame';
import type { PlaneFrame } from '../mesh/section';
import { vec3, type Vec3 } from '../vec3';
import type { CrownMarks } from './crownMeasures';

export interface MarkedFrame {
	/** origin midway between the base points, u from mesial to distal, normal square to the base towards the tip */
	frame: PlaneFrame;
	/** of the apex above the base plane */
	axialHeight_mm: number;
	/** whether the marked labial side looks along u x normal (+z of the tooth frame) or against it; +z where it is not marked */
	labial: '+z' | '-z';
}

/**
 * The crown's frame from its marks, as `measureCrown` takes it: the base plane holds both base points and the labial
 * direction or, without one, is square to the direction of the apex. Null where the marks span no crown.
 */
export function markedFrame({ apex, baseMesial, baseDistal, labial }: CrownMarks): MarkedFrame | null {
	const span = vec3.subtract(baseDistal, baseMesial);
	const length = vec3.norm(span);
	if (!(length > 0)) return null;
	const u = vec3.scale(span, 1 / length);
	const middle = vec3.lerp(baseMesial, baseDistal, 0.5);
	const toApex = vec3.subtract(apex, middle);
	const upright = vec3.subtract(toApex, vec3.scale(u, vec3.dot(toApex, u)));
	const across: Vec3 = labial ? vec3.cross(u, labial) : upright;
	const axis = labial && vec3.norm(across) > 1e-3 * vec3.norm(labial) ? across : upright;
	const size = vec3.norm(axis);
	if (!(size > 0)) return null;
	const rise = vec3.scale(axis, vec3.dot(toApex, axis) / size ** 2);
	const axialHeight_mm = vec3.norm(rise);
	if (!(axialHeight_mm > 1e-6 * length)) return null;
	const frame = planeFrame(middle, rise, u);
	const z = vec3.scale(frame.v, -1);
	return { frame, axialHeight_mm, labial: labial && vec3.dot(labial, z) < 0 ? '-z' : '+z' };
}
