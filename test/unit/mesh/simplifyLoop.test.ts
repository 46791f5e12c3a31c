import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simplifyLoop } from '../../../src/lib/domain/mesh/simplifyLoop';

describe('simplifyLoop', () => {
	it('reduces a finely drawn square to its corners', () => {
		const side = Array.from({ length: 10 }, (_, i) => i / 10);
		const square = [
			...side.map((t) => [t, 0]),
			...side.map((t) => [1, t]),
			...side.map((t) => [1 - t, 1]),
			...side.map((t) => [0, 1 - t]),
		];
		expect([...simplifyLoop(Float64Array.from(square.flat()), 0.01)]).toEqual([0, 0, 1, 0, 1, 1, 0, 1]);
	});

	it('never leaves the outline by more than the tolerance (seed 91)', () => {
		fc.assert(
			fc.property(
				fc.array(fc.double({ min: 0.8, max: 1.2, noNaN: true }), { minLength: 8, maxLength: 80 }),
				fc.double({ min: 0.01, max: 0.3, noNaN: true }),
				(radii, tolerance) => {
					const points = radii.flatMap((r, i) => {
						const t = (2 * Math.PI * i) / radii.length;
						return [r * Math.cos(t), r * Math.sin(t)];
					});
					const simple = simplifyLoop(Float64Array.from(points), tolerance);
					for (let i = 0; i < points.length; i += 2) {
						let nearest = Infinity;
						for (let k = 0; k < simple.length; k += 2) {
							const [ax, ay] = [simple[k], simple[k + 1]];
							const [bx, by] = [simple[(k + 2) % simple.length], simple[(k + 3) % simple.length]];
							const l2 = (bx - ax) ** 2 + (by - ay) ** 2 || 1;
							const dot = ((points[i] - ax) * (bx - ax) + (points[i + 1] - ay) * (by - ay)) / l2;
							const t = Math.max(0, Math.min(1, dot));
							const [x, y] = [ax + t * (bx - ax), ay + t * (by - ay)];
							nearest = Math.min(nearest, Math.hypot(points[i] - x, points[i + 1] - y));
						}
						// distance to the line may be less than to the piece of it
						expect(nearest).toBeLessThan(tolerance * 2 + 1e-9);
					}
				},
			),
			{ seed: 91, numRuns: 100 },
		);
	});

	it('keeps everything at tolerance 0', () => {
		const points = Float64Array.of(0, 0, 1, 0, 2, 0, 2, 2);
		expect(simplifyLoop(points, 0)).toBe(points);
	});
});
