import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minAreaBox } from '../../../src/lib/domain/mesh/minAreaBox';

describe('minAreaBox', () => {
	it('finds a turned rectangle again, with points inside it (seed 31)', () => {
		const size = fc.double({ min: 1, max: 20, noNaN: true });
		fc.assert(
			fc.property(size, size, fc.double({ min: -85, max: 85, noNaN: true }), (a, b, angle) => {
				const c = Math.cos((angle * Math.PI) / 180);
				const s = Math.sin((angle * Math.PI) / 180);
				const corners = [
					[0, 0],
					[a + b, 0],
					[a + b, b],
					[0, b],
					[a / 2, b / 3],
					[a / 3, b / 2],
				];
				const box = minAreaBox(
					Float64Array.from(corners.flatMap(([x, y]) => [x * c - y * s, x * s + y * c])),
				);
				expect(box.length).toBeCloseTo(a + b, 9);
				expect(box.width).toBeCloseTo(b, 9);
				expect(box.angle_deg).toBeCloseTo(angle, 6);
			}),
			{ seed: 31, numRuns: 100 },
		);
	});

	it('of points on a line has no width', () => {
		expect(minAreaBox(Float64Array.of(0, 0, 1, 1, 3, 3)).width).toBeCloseTo(0, 12);
	});
});
