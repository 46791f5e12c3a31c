import { describe, expect, it } from 'vitest';
import { outline } from '../../../src/lib/domain/mesh/outline';
import { box, ellipticCone, placed, sphere, torus } from './shapes';

const towards = [0, 0, -1] as const;
const up = [0, 1, 0] as const;

describe('outline', () => {
	it('of a sphere is a circle within 0.5 %', () => {
		const [circle, ...others] = outline(placed(sphere(7, 256, 128), [0, 0, 0], 1, [3, -2, 9]), towards, up);
		expect(others).toEqual([]);
		expect(circle.hole).toBe(false);
		expect(Math.abs(circle.area / (Math.PI * 49) - 1)).toBeLessThan(0.005);
		for (let i = 0; i < circle.points.length; i += 2) {
			const r = Math.hypot(circle.points[i] - 3, circle.points[i + 1] + 2);
			expect(Math.abs(r / 7 - 1)).toBeLessThan(0.005);
		}
	});

	it('of a torus along its axis has a hole', () => {
		const [outer, inner] = outline(torus(9, 3, 200, 60), [0, -1, 0], [0, 0, 1]);
		expect(outer.hole).toBe(false);
		expect(inner.hole).toBe(true);
		expect(Math.abs(outer.area / (Math.PI * 144) - 1)).toBeLessThan(0.005);
		expect(Math.abs(inner.area / (Math.PI * 36) - 1)).toBeLessThan(0.01);
	});

	it('of a cone is its triangle, the tip where it belongs and distal to the right', () => {
		const [triangle] = outline(ellipticCone(10, 6, [8, 40, 0]), towards, up);
		expect(Math.abs(triangle.area / 400 - 1)).toBeLessThan(0.005);
		let top = 0;
		for (let i = 0; i < triangle.points.length; i += 2)
			if (triangle.points[i + 1] > triangle.points[top + 1]) top = i;
		expect(triangle.points[top]).toBeCloseTo(8, 0);
		expect(triangle.points[top + 1]).toBeGreaterThan(39.6);
		// straight sides need few points
		expect(triangle.points.length / 2).toBeLessThan(150);
	});

	it('of a box aslant is its shadow: two sides seen at 45 degrees', () => {
		const [hexagon] = outline(box(2, 5, 2), [-1, 0, -1], up);
		expect(Math.abs(hexagon.area / (5 * 2 * Math.SQRT2) - 1)).toBeLessThan(0.005);
	});

	it('of nothing is nothing', () => {
		expect(outline({ positions: new Float32Array(0), indices: new Uint32Array(0) }, towards, up)).toEqual([]);
	});
});
