/**
 * Cuts a picture off at a plane without a test in any pixel: the near plane, or seen from the kept side the far plane,
 * is laid into it (after Lengyel 2005, "Oblique view frustum depth projection and clipping"). Edges stay antialiased and
 * nothing costs more than an uncut picture.
 */
import { Matrix4, Vector3 } from 'three';
import type { ShapeRef } from '../api';

/** Nearer to the eye than this share of the eye's distance the plane is moved off it: depth needs some way to go. */
const LEAST_OFF = 1e-4;

/**
 * Changes `projection` so that only what lies at or below `height_mm` along the tooth's axis is drawn.
 * `stand` brings the tooth frame to the eye's frame (rigid). Returns whether the eye looks at the cut face.
 */
export const cutProjection = (
	projection: Matrix4,
	stand: Matrix4,
	height_mm: number,
	bounds: ShapeRef['bounds'],
): boolean => {
	const s = stand.elements;
	const axis = new Vector3(s[4], s[5], s[6]);
	const origin = new Vector3(s[12], s[13], s[14]);
	const least = LEAST_OFF * origin.length();
	// positive on the side that is kept; the eye is at 0
	let atEye = height_mm + axis.dot(origin);
	const facing = atEye < 0;
	if (Math.abs(atEye) < least) atEye = facing ? -least : least;
	const keeps = (p: Vector3) => atEye - axis.dot(p);

	// as much of the depth as the farthest corner allows
	let stretch = Infinity;
	for (let i = 0; i < 8; i++) {
		const corner = new Vector3(
			(i & 1 ? bounds.max : bounds.min)[0],
			(i & 2 ? bounds.max : bounds.min)[1],
			(i & 4 ? bounds.max : bounds.min)[2],
		).applyMatrix4(stand);
		const kept = keeps(corner);
		if (kept > 0) stretch = Math.min(stretch, (2 * -corner.z) / kept);
	}
	if (!Number.isFinite(stretch)) stretch = 1;
	stretch *= 0.999;

	const e = projection.elements;
	const sign = facing ? 1 : -1;
	// depth = +-(stretch * keeps - w): from the plane on, nearer is less
	for (const [column, value] of [-axis.x, -axis.y, -axis.z, atEye].entries())
		e[column * 4 + 2] = sign * (stretch * value - e[column * 4 + 3]);
	return facing;
};
