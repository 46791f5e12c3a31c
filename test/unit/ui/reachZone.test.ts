import { describe, expect, it } from 'vitest';
import { reachZone } from '../../../src/lib/ui/reachZone';

// 16:9 picture heights, mm: 32" 398.5; 55" 684.9 (diagonal_in * 25.4 * 9 / sqrt(337))
const wide = (diagonal_in: number, bottomEdge_mm?: number) => ({
	diagonal_in,
	width_px: 1920,
	height_px: 1080,
	bottomEdge_mm,
});
const upright = (diagonal_in: number, bottomEdge_mm?: number) => ({
	diagonal_in,
	width_px: 1080,
	height_px: 1920,
	bottomEdge_mm,
});
const height_mm = (screen: { diagonal_in: number; width_px: number; height_px: number }) =>
	(screen.diagonal_in * 25.4 * screen.height_px) / Math.hypot(screen.width_px, screen.height_px);

describe('reachZone', () => {
	it("keeps to children's reach, 455 to 1015 mm (ADA 308.1, ages 5 to 12), where the screen has enough of it", () => {
		const zone = reachZone(wide(32, 780));
		expect(zone.lowest_mm).toBe(780);
		expect(zone.highest_mm).toBe(1015);
		expect(zone.bottom).toBe(1);
		expect(zone.top).toBeCloseTo((780 + 398.5 - 1015) / 398.5, 3);
	});

	it("keeps a standing screen that reaches the floor above children's lowest reach", () => {
		const zone = reachZone(upright(55, 100));
		expect(zone.lowest_mm).toBe(455);
		expect(zone.highest_mm).toBe(1015);
		expect(zone.bottom).toBeCloseTo(1 - 355 / height_mm(upright(55)), 3);
	});

	it.each([wide(32, 900), wide(55, 950), upright(43, 900), wide(21.5, 1000), upright(55, 860)])(
		'never goes above 1220 or below 380 mm (EN 301 549 8.3, ADA 308.2.1): %o',
		(screen) => {
			const zone = reachZone(screen);
			expect(zone.highest_mm).toBeLessThanOrEqual(1220);
			expect(zone.lowest_mm).toBeGreaterThanOrEqual(380);
			expect(zone.highest_mm! - zone.lowest_mm!).toBeGreaterThanOrEqual(180);
			expect(zone.top).toBeGreaterThanOrEqual(-1e-9);
			expect(zone.bottom).toBeLessThanOrEqual(1 + 1e-9);
		},
	);

	it('takes the lowest strip of a screen that hangs out of reach', () => {
		const zone = reachZone(wide(55, 1500));
		expect(zone.bottom).toBeCloseTo(1, 9);
		expect(zone.lowest_mm).toBe(1500);
		expect(zone.highest_mm).toBe(1690);
	});

	it('takes the lower half where nobody says how the screen hangs', () => {
		expect(reachZone(wide(32))).toEqual({ top: 0.5, bottom: 1, highest_mm: null, lowest_mm: null });
	});
});
