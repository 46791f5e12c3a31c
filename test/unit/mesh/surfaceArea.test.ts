import { describe, expect, it } from 'vitest';
import { surfaceArea } from '../../../src/lib/domain/mesh/surfaceArea';
import { box, ellipticCone, placed, sphere, torus } from './shapes';

describe('surfaceArea', () => {
	it('is 2(ab + bc + ca) for a box, wherever it lies', () => {
		expect(surfaceArea(placed(box(2, 3, 5), [1, 2, 3], 1, [9, 9, 9]))).toBeCloseTo(62, 4);
	});

	it('is pi r (r + slant) for a round cone, within 0.05 %', () => {
		const slant = Math.hypot(10, 40);
		expect(surfaceArea(ellipticCone(10, 10, [0, 40, 0])) / (Math.PI * 10 * (10 + slant))).toBeCloseTo(1, 3);
	});

	it.each([
		['sphere, 4 pi r^2', (n: number) => sphere(7, 2 * n, n), 4 * Math.PI * 49],
		['torus, 4 pi^2 R r', (n: number) => torus(9, 2, 2 * n, n), 4 * Math.PI ** 2 * 18],
	])('closes in on a %s by a factor near 4 when the mesh is twice as fine', (_, make, exact) => {
		const errors = [16, 32, 64].map((n) => exact - surfaceArea(make(n)));
		expect(errors[0] / errors[1]).toBeGreaterThan(3.7);
		expect(errors[1] / errors[2]).toBeGreaterThan(3.7);
		expect(errors[2] / exact).toBeLessThan(0.003);
	});
});
