import { describe, expect, it } from 'vitest';
import { tipRadius } from '../../../src/lib/domain/measure/tipRadius';
import { box, ellipticCone, roundedCone, sphere } from '../mesh/shapes';

describe('tipRadius', () => {
	it.each([0.3, 1, 4])('finds the sphere of %d mm on a cone', (radius) => {
		const mesh = roundedCone(10, 0.25, radius);
		const p = mesh.positions;
		const apex = [0, p[p.length - 2], 0] as const;
		expect(Math.abs(tipRadius(mesh, apex, 10)! / radius - 1)).toBeLessThan(0.02);
	});

	it('is the radius of a sphere, at any of its points', () => {
		expect(tipRadius(sphere(6, 96, 48), [0, 6, 0], 5)).toBeCloseTo(6, 3);
		expect(tipRadius(sphere(6, 96, 48), [6, 0, 0], 5)).toBeCloseTo(6, 3);
	});

	it.each([
		['slender', 40],
		['right-angled', 10],
		['low', 4],
	])('is null for a sharp %s cone', (_, height) => {
		expect(tipRadius(ellipticCone(10, 10, [0, height, 0]), [0, height, 0], 10)).toBeNull();
	});

	it('is null where there are too few points', () => {
		expect(tipRadius(box(1, 1, 1), [1, 1, 1], 1)).toBeNull();
	});
});
