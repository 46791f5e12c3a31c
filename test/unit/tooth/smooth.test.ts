import { describe, expect, it } from 'vitest';
import { angleBetween, monotoneCurve, rounded, smoothstep } from '../../../src/lib/domain/tooth/smooth';

describe('smooth', () => {
	it('smoothstep runs from 0 to 1 with level ends', () => {
		expect([smoothstep(2, 4, 1), smoothstep(2, 4, 3), smoothstep(2, 4, 5)]).toEqual([0, 0.5, 1]);
		expect(smoothstep(2, 4, 2.001)).toBeLessThan(1e-5);
	});

	it('angleBetween takes the short way', () => {
		expect(angleBetween(0.1, 2 * Math.PI - 0.1)).toBeCloseTo(0.2, 12);
		expect(angleBetween(2 * Math.PI - 0.1, 0.1)).toBeCloseTo(-0.2, 12);
	});

	it('monotoneCurve passes its points and never overshoots between them', () => {
		const [xs, ys] = [
			[0, 0.1, 0.5, 0.6, 1],
			[1, 0.7, 1.4, 1.4, 0.2],
		];
		const curve = monotoneCurve(xs, ys);
		xs.forEach((x, i) => expect(curve(x)).toBeCloseTo(ys[i], 12));
		for (let i = 0; i + 1 < xs.length; i++)
			for (let t = 0; t <= 1; t += 0.05) {
				const y = curve(xs[i] + t * (xs[i + 1] - xs[i]));
				expect(y).toBeGreaterThanOrEqual(Math.min(ys[i], ys[i + 1]) - 1e-12);
				expect(y).toBeLessThanOrEqual(Math.max(ys[i], ys[i + 1]) + 1e-12);
			}
	});

	it('rounded keeps straight lines and end values, and takes the corner off', () => {
		const line = rounded((x) => 3 - 2 * x, 0.1);
		for (const x of [0, 0.03, 0.5, 0.97, 1]) expect(line(x)).toBeCloseTo(3 - 2 * x, 9);
		const tent = rounded((x) => 1 - Math.abs(x - 0.5), 0.1);
		expect(tent(0)).toBeCloseTo(0.5, 9);
		expect(tent(0.5)).toBeLessThan(0.98);
		expect(tent(0.2)).toBeCloseTo(0.7, 9);
	});
});
