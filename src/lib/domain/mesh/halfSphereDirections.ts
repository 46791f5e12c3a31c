import type { Vec3 } from '../vec3';

/** `count` unit vectors spread evenly over the upper half sphere (y > 0) along a golden-angle spiral. */
export function halfSphereDirections(count: number): Vec3[] {
	const golden = Math.PI * (3 - Math.sqrt(5));
	return Array.from({ length: count }, (_, i) => {
		const y = (i + 0.5) / count;
		const r = Math.sqrt(1 - y * y);
		return [r * Math.cos(golden * i), y, r * Math.sin(golden * i)] as const;
	});
}
