import { describe, expect, it } from 'vitest';
import { hatch } from '../../../src/lib/domain/mesh/hatch';

const square = (side: number): number[] => [0, 0, side, 0, side, side, 0, side];
const total = (lines: [number, number, number, number][]): number =>
	lines.reduce((sum, [x0, y0, x1, y1]) => sum + Math.hypot(x1 - x0, y1 - y0), 0);

describe('hatch', () => {
	it('covers a face evenly: length of all lines times their distance is its area', () => {
		// lines at distance d through an area A are A / d long together (Cavalieri)
		expect(Math.abs((total(hatch([square(10)], 0.05)) * 0.05) / 100 - 1)).toBeLessThan(0.002);
		const hole = square(4).map((x) => x + 3);
		expect(Math.abs((total(hatch([square(10), hole], 0.05)) * 0.05) / 84 - 1)).toBeLessThan(0.002);
	});

	it('rises to the right at 45 degrees and stays inside', () => {
		const lines = hatch([square(10)], 0.9);
		expect(lines.length).toBeGreaterThan(12);
		for (const [x0, y0, x1, y1] of lines) {
			expect(x1 - x0).toBeCloseTo(y1 - y0, 9);
			expect(x1).toBeGreaterThan(x0);
			for (const v of [x0, y0, x1, y1]) {
				expect(v).toBeGreaterThan(-1e-9);
				expect(v).toBeLessThan(10 + 1e-9);
			}
		}
	});

	it('crosses no hole', () => {
		const hole = square(4).map((x) => x + 3);
		for (const [x0, y0, x1, y1] of hatch([square(10), hole], 0.3)) {
			const [x, y] = [(x0 + x1) / 2, (y0 + y1) / 2];
			expect(x > 3 && x < 7 && y > 3 && y < 7).toBe(false);
		}
	});

	it('draws nothing without a face or a distance', () => {
		expect(hatch([], 1)).toEqual([]);
		expect(hatch([square(10)], 0)).toEqual([]);
	});
});
