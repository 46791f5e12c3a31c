import { describe, expect, it } from 'vitest';
import { TAPERS } from '../../../src/lib/domain/tooth/form';
import { taperSlope, taperWidth, tipProfile } from '../../../src/lib/domain/tooth/tipProfile';

describe('tipProfile', () => {
	it.each(TAPERS)('%s: width rises from 0 at the tip to 1 at the base, with the slope it says', (taper) => {
		expect(taperWidth(taper, 0)).toBe(0);
		expect(taperWidth(taper, 1)).toBeCloseTo(1, 12);
		for (const x of [0.1, 0.4, 0.7, 0.95]) {
			const h = 1e-6;
			const slope = (taperWidth(taper, x + h) - taperWidth(taper, x - h)) / (2 * h);
			expect(taperSlope(taper, x)).toBeCloseTo(slope, 5);
			expect(slope).toBeGreaterThan(0);
		}
	});

	it('a cone touches the sphere where its own half angle says', () => {
		const { arcEnds_mm, raise_mm } = tipProfile('cone', 10, 40, 2);
		// half angle a of the raised cone; contact 90 - a from the sphere's top, virtual tip r / sin a above its centre
		const a = Math.atan(10 / (40 + raise_mm));
		expect(raise_mm).toBeCloseTo(2 / Math.sin(a) - 2, 6);
		expect(arcEnds_mm).toBeCloseTo(2 * (1 - Math.sin(a)), 6);
	});

	it.each(TAPERS)('%s: arc and taper meet with equal width and slope', (taper) => {
		const [radius, length, tip] = [10, 30, 3.8];
		const { arcEnds_mm: u, raise_mm } = tipProfile(taper, radius, length, tip);
		expect(u).toBeGreaterThan(0);
		const x = (u + raise_mm) / (length + raise_mm);
		const arc = Math.sqrt(u * (2 * tip - u));
		expect(radius * taperWidth(taper, x)).toBeCloseTo(arc, 6);
		expect((radius * taperSlope(taper, x)) / (length + raise_mm)).toBeCloseTo((tip - u) / arc, 5);
	});

	it('leaves a dome alone that is blunter than the tip asked for', () => {
		expect(tipProfile('dome', 10, 12, 2)).toEqual({ arcEnds_mm: 0, raise_mm: 0 });
	});
});
