import { describe, expect, it } from 'vitest';
import { polygonArea } from '../../../src/lib/domain/mesh/polygonArea';
import { cutRange } from '../../../src/lib/ui/tools/cutRange';
import { loopsPath } from '../../../src/lib/ui/tools/loopsPath';
import { RICE_UP_TO_mm, SIZE_FIGURES, sizeFigureFor } from '../../../src/lib/ui/tools/sizeFigures';

const tooth = (crownHeight_mm: number, lowest_mm: number) => ({
	shape: { crownHeight_mm, bounds: { min: [-5, lowest_mm, -5] } },
});

describe('cutRange', () => {
	it('runs from the base to just under the tip where no tooth has a root', () => {
		expect(cutRange('share', [tooth(20, 0), tooth(40, 0)])).toMatchObject({ least: 0.02, most: 0.98 });
		const mm = cutRange('mm', [tooth(20, 0), tooth(40, 0)]);
		expect(mm.least).toBeCloseTo(1, 9);
		expect(mm.most).toBeCloseTo(39, 9);
	});

	it('goes down into the lowest root', () => {
		const share = cutRange('share', [tooth(20, -15), tooth(40, 0)]);
		expect(share.least).toBeLessThan(-0.7);
		expect(share.least).toBeGreaterThanOrEqual(-0.75);
		const mm = cutRange('mm', [tooth(20, -15), tooth(40, 0)]);
		expect(mm.least).toBeLessThan(-13);
		expect(mm.least).toBeGreaterThanOrEqual(-15);
	});

	it('moves in whole fine steps', () => {
		for (const by of ['share', 'mm'] as const)
			for (const teeth of [[], [tooth(4, -2)], [tooth(33, -20), tooth(90, 0)]]) {
				const { least, most, step, fine } = cutRange(by, teeth);
				expect(most).toBeGreaterThan(least);
				for (const value of [least, most, step]) {
					const steps = value / fine;
					expect(steps - Math.round(steps)).toBeCloseTo(0, 6);
				}
			}
	});
});

describe('loopsPath', () => {
	it('draws each loop closed, with y turned over', () => {
		expect(
			loopsPath([
				[0, 0, 2, 0, 1, 3],
				[0.12345, -1, 1, -1, 1, -2],
			]),
		).toBe('M0 0L2 0L1 -3zM0.123 1L1 1L1 2z');
		expect(loopsPath([])).toBe('');
	});
});

/** Points of a path of M and Q commands, curves cut into a few pieces. */
function outlineOf(path: string): Float64Array {
	const points: number[] = [];
	for (const [, command, rest] of path.matchAll(/([MQ])([^MQz]*)/g)) {
		const n = [...rest.matchAll(/-?\d*\.?\d+/g)].map(Number);
		if (command === 'M') {
			points.push(n[0], n[1]);
			continue;
		}
		const [x0, y0] = points.slice(-2);
		for (let i = 1; i <= 8; i++) {
			const t = i / 8;
			const at = (a: number, b: number, c: number) => (1 - t) ** 2 * a + 2 * t * (1 - t) * b + t * t * c;
			points.push(at(x0, n[0], n[2]), at(y0, n[1], n[3]));
		}
	}
	return Float64Array.from(points);
}

describe('the hand and the grain of rice', () => {
	for (const [name, figure] of Object.entries(SIZE_FIGURES))
		it(`the ${name} is as large as it says`, () => {
			const points = outlineOf(figure.path);
			const x = points.filter((_, i) => i % 2 === 0);
			const y = points.filter((_, i) => i % 2 === 1);
			const off = 0.03 * figure.height_mm;
			expect(Math.abs(Math.max(...x) - Math.min(...x) - figure.width_mm)).toBeLessThan(off);
			expect(Math.abs(Math.max(...y) - Math.min(...y) - figure.height_mm)).toBeLessThan(off);
			expect(Math.min(...x)).toBeGreaterThan(-off);
			expect(Math.min(...y)).toBeGreaterThan(-off);
			// a shape, not a line
			const share = Math.abs(polygonArea(points)) / (figure.width_mm * figure.height_mm);
			expect(share).toBeGreaterThan(0.4);
			expect(share).toBeLessThan(0.95);
		});

	it('small teeth lie beside rice, large ones beside a hand', () => {
		expect(sizeFigureFor([4, 9])).toBe('rice');
		expect(sizeFigureFor([4, RICE_UP_TO_mm + 1])).toBe('hand');
		expect(sizeFigureFor([])).toBe('rice');
	});
});
