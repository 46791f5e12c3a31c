import { describe, expect, it } from 'vitest';
import { sampleTriangles } from '../../../src/lib/domain/mesh/sampleTriangles';
import { box, sphere } from './shapes';

describe('sampleTriangles', () => {
	it('leaves a small mesh alone', () => {
		const mesh = box(1, 1, 1);
		expect(sampleTriangles(mesh, 12)).toBe(mesh);
	});

	it('keeps every large triangle and an even share of small ones, in their places', () => {
		const [large, small] = [box(10, 10, 10), sphere(1, 64, 32)];
		const both = {
			positions: Float32Array.of(...large.positions, ...small.positions),
			indices: Uint32Array.of(...large.indices, ...small.indices.map((i) => i + 8)),
		};
		const sample = sampleTriangles(both, 1000);
		expect(sample.indices.length / 3).toBeLessThanOrEqual(1000);
		expect([...sample.positions.slice(0, 24)].sort()).toEqual([...large.positions].sort());
		expect(sample.indices.length / 3).toBeGreaterThan(12 + 15);
		// what is left of the sphere still lies on it
		for (let i = 24; i < sample.positions.length; i += 3) {
			expect(Math.hypot(...sample.positions.slice(i, i + 3))).toBeCloseTo(1, 5);
		}
	});
});
