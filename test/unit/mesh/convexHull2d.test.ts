import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convexHull2d } from '../../../src/lib/domain/mesh/convexHull2d';
import { polygonArea } from '../../../src/lib/domain/mesh/polygonArea';

describe('convexHull2d', () => {
	it('drops points inside and on the sides of a square', () => {
		const hull = convexHull2d(Float64Array.of(0, 0, 1, 0, 2, 0, 2, 2, 0, 2, 0, 1, 1, 1));
		expect([...hull]).toEqual([0, 0, 2, 0, 2, 2, 0, 2]);
		expect(polygonArea(hull)).toBe(4);
	});

	it.each([40, 900])('has every one of %i points on its left (seed 32)', (count) => {
		const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
		fc.assert(
			fc.property(fc.array(coordinate, { minLength: count, maxLength: count }), (flat) => {
				const points = Float64Array.from(flat);
				const hull = convexHull2d(points);
				for (let k = 0; k < hull.length; k += 2) {
					const [ax, ay] = [hull[k], hull[k + 1]];
					const [bx, by] = [hull[(k + 2) % hull.length], hull[(k + 3) % hull.length]];
					for (let i = 0; i < points.length; i += 2) {
						const left = (bx - ax) * (points[i + 1] - ay) - (by - ay) * (points[i] - ax);
						if (left < -1e-7) throw new Error(`point ${i / 2} lies outside`);
					}
				}
				expect(hull.length).toBeGreaterThanOrEqual(4);
			}),
			{ seed: 32, numRuns: 30 },
		);
	});
});
