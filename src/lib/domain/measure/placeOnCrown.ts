import { vec3, type Vec3 } from '../vec3';
import type { MarkedFrame } from './markedFrame';

export interface CrownPlace {
	/** fraction of axial height; below 0 = on the root */
	at: number;
	/** degrees round the section: 0 distal, 90 labial, 180 mesial, 270 lingual; from 0 up to, not including, 360 */
	where_deg: number;
}

/** Height of a point as a fraction of the crown's axial height. */
export const heightOnCrown = ({ frame, axialHeight_mm }: MarkedFrame, point: Vec3): number =>
	vec3.dot(vec3.subtract(point, frame.origin), frame.normal) / axialHeight_mm;

/** Where a point of the surface lies on its crown; `middle` is the middle of the section at its height. */
export function placeOnCrown(crown: MarkedFrame, point: Vec3, middle: Vec3): CrownPlace {
	const { frame, labial } = crown;
	const d = vec3.subtract(point, middle);
	const z = -vec3.dot(d, frame.v) * (labial === '-z' ? -1 : 1);
	const degrees = (Math.atan2(z, vec3.dot(d, frame.u)) * 180) / Math.PI;
	return { at: heightOnCrown(crown, point), where_deg: (degrees + 360) % 360 };
}

/** The direction that `where_deg` means on this crown, square to its axis. */
export function crownDirection({ frame, labial }: MarkedFrame, where_deg: number): Vec3 {
	const angle = (where_deg * Math.PI) / 180;
	const across = -Math.sin(angle) * (labial === '-z' ? -1 : 1);
	return vec3.add(vec3.scale(frame.u, Math.cos(angle)), vec3.scale(frame.v, across));
}
