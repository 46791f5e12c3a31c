import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitSphere } from '../../../src/lib/domain/mesh/fitSphere';

const place = fc.double({ min: -50, max: 50, noNaN: true });

describe('fitSphere', () => {
	it('finds a sphere from a shallow cap of it (seed 41)', () => {
		fc.assert(
			fc.property(fc.tuple(place, place, place), fc.double({ min: 0.1, max: 20, noNaN: true }), (c, r) => {
				const points: number[] = [];
				for (let i = 0; i < 60; i++) {
					const polar = 0.5 * Math.sqrt(i / 60);
					points.push(
						c[0] + r * Math.sin(polar) * Math.cos(i * 2.4),
						c[1] + r * Math.cos(polar),
						c[2] + r * Math.sin(polar) * Math.sin(i * 2.4),
					);
				}
				const fitted = fitSphere(Float64Array.from(points), new Float64Array(60).fill(1))!;
				expect(fitted.radius / r).toBeCloseTo(1, 6);
				expect(fitted.rms / r).toBeLessThan(1e-6);
				expect(Math.hypot(...c.map((x, k) => x - fitted.centre[k])) / r).toBeLessThan(1e-5);
			}),
			{ seed: 41, numRuns: 50 },
		);
	});

	it('has no answer for points in a plane or too few', () => {
		const flat = Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0, 1, 1, 0, 3, 2, 0);
		expect(fitSphere(flat, new Float64Array(5).fill(1))).toBeNull();
		expect(fitSphere(flat.slice(0, 9), new Float64Array(3).fill(1))).toBeNull();
	});
});
