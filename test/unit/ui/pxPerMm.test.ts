import { describe, expect, it } from 'vitest';
import { pxPerMm } from '../../../src/lib/ui/pxPerMm';

describe('pxPerMm', () => {
	// worked by px/mm = width_px / (diagonal_in * 25.4 * 16 / sqrt(337)) for 16:9 screens; 20 mm is the least size
	// of a primary key at a kiosk used standing (Colle & Hiszem 2004)
	it.each([
		[21.5, 1920, 1080, 4.034, 80.7],
		[24, 1920, 1080, 3.614, 72.3],
		[32, 3840, 2160, 5.421, 108.4],
		[43, 3840, 2160, 4.034, 80.7],
		[55, 3840, 2160, 3.154, 63.1],
	])('%d inch, %d x %d: %d px a mm, 20 mm are %d px', (diagonal_in, width_px, height_px, perMm, twenty) => {
		const px = pxPerMm({ diagonal_in, width_px, height_px });
		expect(px).toBeCloseTo(perMm, 3);
		expect(20 * px).toBeCloseTo(twenty, 1);
		expect(px).toBeCloseTo(width_px / (diagonal_in * 25.4 * (16 / Math.sqrt(337))), 9);
	});

	it('refuses a screen without extent', () => {
		expect(() => pxPerMm({ diagonal_in: 0, width_px: 1920, height_px: 1080 })).toThrow(/no extent/);
	});
});
