/** A point or direction as [x, y, z]. Lengths are millimetres unless a name says otherwise. */
export type Vec3 = readonly [number, number, number];

export const vec3 = {
	add: (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]],
	subtract: (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]],
	scale: (a: Vec3, s: number): Vec3 => [a[0] * s, a[1] * s, a[2] * s],
	dot: (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2],
	cross: (a: Vec3, b: Vec3): Vec3 => [
		a[1] * b[2] - a[2] * b[1],
		a[2] * b[0] - a[0] * b[2],
		a[0] * b[1] - a[1] * b[0],
	],
	norm: (a: Vec3): number => Math.hypot(a[0], a[1], a[2]),
	distance: (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]),
	lerp: (a: Vec3, b: Vec3, t: number): Vec3 => [
		a[0] + (b[0] - a[0]) * t,
		a[1] + (b[1] - a[1]) * t,
		a[2] + (b[2] - a[2]) * t,
	],
	/** Unit vector along `a`; throws for a zero vector (a programmer's error). */
	normalise: (a: Vec3): Vec3 => {
		const n = Math.hypot(a[0], a[1], a[2]);
		if (!(n > 0)) throw new RangeError('vec3.normalise: the vector has no length');
		return [a[0] / n, a[1] / n, a[2] / n];
	},
} as const;
