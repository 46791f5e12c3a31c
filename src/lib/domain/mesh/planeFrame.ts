import { vec3, type Vec3 } from '../vec3';
import type { PlaneFrame } from './section';

/**
 * Frame of the plane through `origin` across `normal`. `u` is `along` laid into the plane, or any direction
 * in it when `along` is missing or points along the normal. u x v = normal.
 */
export function planeFrame(origin: Vec3, normal: Vec3, along?: Vec3): PlaneFrame {
	const n = vec3.normalise(normal);
	const flat = (a: Vec3): Vec3 => vec3.subtract(a, vec3.scale(n, vec3.dot(a, n)));
	let u = along ? flat(along) : ([0, 0, 0] as Vec3);
	if (!(vec3.norm(u) > 1e-9 * (along ? vec3.norm(along) : 1))) {
		const [x, y, z] = [Math.abs(n[0]), Math.abs(n[1]), Math.abs(n[2])];
		u = flat(x <= y && x <= z ? [1, 0, 0] : y <= z ? [0, 1, 0] : [0, 0, 1]);
	}
	u = vec3.normalise(u);
	return { origin, u, v: vec3.cross(n, u), normal: n };
}
