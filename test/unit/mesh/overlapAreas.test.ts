import { describe, expect, it } from 'vitest';
import { overlapAreas } from '../../../src/lib/domain/mesh/overlapAreas';

const square = (x: number, y: number, side: number) => [x, y, x + side, y, x + side, y + side, x, y + side];
const circle = (x: number, y: number, r: number, n = 2000) =>
	Array.from({ length: n }, (_, i) => (2 * Math.PI * i) / n).flatMap((t) => [
		x + r * Math.cos(t),
		y + r * Math.sin(t),
	]);

describe('overlapAreas', () => {
	it('tells apart what two squares share and what each has alone', () => {
		const { both, onlyA, onlyB } = overlapAreas([square(0, 0, 4)], [square(1, 2, 4)]);
		expect(both).toBeCloseTo(3 * 2, 1);
		expect(onlyA).toBeCloseTo(16 - 6, 1);
		expect(onlyB).toBeCloseTo(16 - 6, 1);
	});

	it('gives the lens of two circles', () => {
		// 2 r^2 acos(d / 2r) - d/2 sqrt(4 r^2 - d^2), for r = 3, d = 2
		const lens = 2 * 9 * Math.acos(1 / 3) - 1 * Math.sqrt(36 - 4);
		const { both, onlyA } = overlapAreas([circle(0, 0, 3)], [circle(2, 0, 3)]);
		expect(both / lens).toBeCloseTo(1, 3);
		expect(onlyA / (9 * Math.PI - lens)).toBeCloseTo(1, 3);
	});

	it('takes a loop inside another for a hole', () => {
		const ring = [square(0, 0, 6), square(2, 2, 2)];
		const { both, onlyA, onlyB } = overlapAreas(ring, [square(0, 0, 6)]);
		expect(both).toBeCloseTo(32, 1);
		expect(onlyA).toBeCloseTo(0, 6);
		expect(onlyB).toBeCloseTo(4, 1);
	});

	it('gives nothing for nothing', () => {
		expect(overlapAreas([], [])).toEqual({ both: 0, onlyA: 0, onlyB: 0 });
		expect(overlapAreas([square(0, 0, 1)], []).onlyA).toBeCloseTo(1, 6);
	});
});
