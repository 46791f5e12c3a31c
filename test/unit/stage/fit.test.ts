import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { extents, fitViews, pxPerMmToFit, type FitInput } from '../../../src/lib/stage/fit';
import { MARGIN } from '../../../src/lib/stage/thresholds';

const box = (x: number, y: number, z: number): FitInput['bounds'] => ({
	min: [-x / 2, -y / 3, -z / 2],
	max: [x / 2, (2 * y) / 3, z / 2],
});
const view = (x: number, y: number, z: number, crown: number, w = 850, h = 700): FitInput => ({
	width_px: w,
	height_px: h,
	bounds: box(x, y, z),
	crownHeight_mm: crown,
});

describe('extents', () => {
	test('of a 3 x 12 x 4 box: 12 high, 5 across at the worst yaw, half diagonal 6.5', () => {
		const { height_mm, diameter_mm, radius_mm } = extents(box(3, 12, 4));
		expect(height_mm).toBeCloseTo(12, 10);
		expect(diameter_mm).toBeCloseTo(5, 10);
		expect(radius_mm).toBeCloseTo(6.5, 10);
	});
});

describe('px per mm', () => {
	test('a tall tooth is held by the height, a broad one by the width', () => {
		expect(pxPerMmToFit(view(6, 70, 8, 40))).toBeCloseTo((700 * (1 - 2 * MARGIN)) / 70, 10);
		expect(pxPerMmToFit(view(60, 20, 80, 20))).toBeCloseTo((850 * (1 - 2 * MARGIN)) / 100, 10);
	});

	test('same scale: one value for all, and the largest tooth fits', () => {
		const views = [view(20, 80, 20, 40), view(5, 20, 5, 12)];
		const [a, b] = fitViews(views, 'same-scale');
		expect(a).toBe(b);
		expect(a).toBe(Math.min(...views.map(pxPerMmToFit)));
	});

	test('same height: crowns equally tall on screen, all fit', () => {
		const views = [view(20, 80, 20, 40), view(5, 20, 5, 12), view(22, 31, 20, 13)];
		const fits = fitViews(views, 'same-height') as number[];
		const crowns = fits.map((f, i) => f * views[i].crownHeight_mm);
		for (const crown of crowns) expect(crown).toBeCloseTo(crowns[0], 8);
		fits.forEach((f, i) => expect(f).toBeLessThanOrEqual(pxPerMmToFit(views[i]) * (1 + 1e-12)));
	});

	test('each fits: every tooth as large as if it were alone', () => {
		const views = [view(20, 80, 20, 40), null, view(5, 20, 5, 12)];
		expect(fitViews(views, 'each-fits')).toEqual([pxPerMmToFit(views[0]!), null, pxPerMmToFit(views[2]!)]);
	});

	test('life size: a mm is a mm of the glass, whether or not it fits', () => {
		const views = [view(20, 80, 20, 40), null, view(5, 400, 5, 12)];
		expect(fitViews(views, 'life-size', 3.7)).toEqual([3.7, null, 3.7]);
		// nobody has told how large a mm is
		expect(fitViews(views, 'life-size')).toEqual(fitViews(views, 'same-scale'));
	});

	test('empty and unlaid views stay empty and do not count', () => {
		const real = view(20, 80, 20, 40);
		const fits = fitViews([null, real, { ...real, width_px: 0 }], 'same-scale');
		expect(fits).toEqual([null, pxPerMmToFit(real), null]);
		expect(fitViews([null], 'same-height')).toEqual([null]);
		expect(fitViews([], 'same-scale')).toEqual([]);
	});

	test('twice the screen, twice the px per mm; twice the tooth, half', () => {
		const size = fc.double({ min: 1, max: 200, noNaN: true });
		fc.assert(
			fc.property(size, size, size, (x, y, z) => {
				const once = pxPerMmToFit(view(x, y, z, y / 2));
				expect(pxPerMmToFit(view(x, y, z, y / 2, 1700, 1400)) / once).toBeCloseTo(2, 8);
				expect(pxPerMmToFit(view(2 * x, 2 * y, 2 * z, y)) / once).toBeCloseTo(0.5, 8);
			}),
			{ seed: 12 },
		);
	});
});
