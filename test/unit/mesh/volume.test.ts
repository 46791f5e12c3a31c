import { describe, expect, it } from 'vitest';
import { volume } from '../../../src/lib/domain/mesh/volume';
import { box, ellipticCone, placed, sphere, stack, torus } from './shapes';

describe('volume', () => {
	it('is abc for a box and turns negative with the winding', () => {
		const mesh = box(2, 3, 5);
		expect(volume(mesh)).toBeCloseTo(30, 10);
		expect(volume({ ...mesh, indices: mesh.indices.slice().reverse() })).toBeCloseTo(-30, 10);
	});

	it('is pi a b h / 3 for a cone however oblique', () => {
		const upright = volume(ellipticCone(10, 6, [0, 40, 0])) / ((Math.PI * 10 * 6 * 40) / 3);
		const oblique = volume(ellipticCone(10, 6, [25, 40, -8])) / ((Math.PI * 10 * 6 * 40) / 3);
		expect(upright).toBeCloseTo(1, 3);
		expect(oblique).toBeCloseTo(upright, 6);
	});

	it.each([
		['sphere, 4/3 pi r^3', (n: number) => sphere(7, 2 * n, n), (4 / 3) * Math.PI * 343],
		['torus, 2 pi^2 R r^2', (n: number) => torus(9, 2, 2 * n, n), 2 * Math.PI ** 2 * 36],
	])('closes in on a %s by a factor near 4 when the mesh is twice as fine', (_, make, exact) => {
		const errors = [16, 32, 64].map((n) => exact - volume(make(n)));
		expect(errors[0] / errors[1]).toBeGreaterThan(3.7);
		expect(errors[1] / errors[2]).toBeGreaterThan(3.7);
		expect(errors[2] / exact).toBeLessThan(0.005);
	});

	it('keeps its digits far from the origin', () => {
		// 2^10 mm away, single precision still holds coordinates that are multiples of 2^-13
		expect(volume(placed(box(2, 3, 5), [0, 0, 0], 1, [1024, 1024, -1024]))).toBe(30);
	});

	it('adds a flat lid to an open mesh when taken from a point of the lid', () => {
		const rings = [0, 1, 2, 3].map((i) => ({ centre: [i * 0.4, i, 0] as const, a: 4 - i, b: 4 - i }));
		const open = stack(rings, 64, null, [2, 4, 0]);
		const closed = stack(rings, 64, [0, 0, 0], [2, 4, 0]);
		expect(volume(open, [0, 0, 0])).toBeCloseTo(volume(closed), 6);
	});
});
