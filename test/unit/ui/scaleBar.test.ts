import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scaleBarLength_mm } from '../../../src/lib/ui/scaleBar';

describe('scaleBarLength_mm', () => {
	it('takes the largest of 1, 2 and 5 times a power of ten that fits', () => {
		expect(scaleBarLength_mm(10, 160)).toBe(10);
		expect(scaleBarLength_mm(7, 160)).toBe(20);
		expect(scaleBarLength_mm(3, 160)).toBe(50);
		expect(scaleBarLength_mm(200, 160)).toBe(0.5);
		expect(scaleBarLength_mm(16, 160)).toBe(10); // exactly fits
	});

	it('gives nothing where nothing can be drawn', () => {
		expect(scaleBarLength_mm(10, 0)).toBe(0);
		expect(scaleBarLength_mm(0, 100)).toBe(0);
	});

	it('fits, and the next longer step would not (seed 7)', () => {
		fc.assert(
			fc.property(fc.double({ min: 0.01, max: 1000, noNaN: true }), (pxPerMm) => {
				const drawn_px = scaleBarLength_mm(pxPerMm, 160) * pxPerMm;
				return drawn_px <= 160 * (1 + 1e-6) && drawn_px > 160 / 2.51;
			}),
			{ seed: 7 },
		);
	});
});
