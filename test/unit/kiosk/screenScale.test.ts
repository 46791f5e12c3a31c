import { describe, expect, it } from 'vitest';
import { CARD_mm, cssPxPerMm, readScreenScale, screenScale } from '../../../src/lib/kiosk/screenScale';

/** A 27-inch 4K screen: 3840 px over 27 in * 16 / sqrt(337) * 25.4 = 597.7 mm, at two device px per CSS px. */
const SCREEN = { width: 1920, height: 1080, ratio: 2 };
const DEVICE = 3840 / 597.7;

describe('screenScale', () => {
	it('turns a card of 85.60 mm into pixels per millimetre', () => {
		// ISO/IEC 7810:2019, ID-1
		expect([CARD_mm.width, CARD_mm.height]).toEqual([85.6, 53.98]);
		const drawn = (DEVICE * 85.6) / 2;
		const scale = screenScale(drawn, CARD_mm.width, SCREEN)!;
		expect(scale.devicePxPerMm).toBeCloseTo(DEVICE, 9);
		expect(cssPxPerMm(scale, SCREEN)).toBeCloseTo(DEVICE / 2, 9);
	});

	it('stays within 1 % when the card is set half a CSS pixel wrong', () => {
		for (const drawn of [85.6 * 1.58, 85.6 * 3.8, 85.6 * 6]) {
			const right = screenScale(drawn, 85.6, { ...SCREEN, ratio: 1 })!;
			const wrong = screenScale(drawn + 0.5, 85.6, { ...SCREEN, ratio: 1 })!;
			expect(Math.abs(wrong.devicePxPerMm / right.devicePxPerMm - 1)).toBeLessThan(0.01);
		}
	});

	it('holds when the browser zooms and when the screen is turned', () => {
		const scale = screenScale(300, 85.6, SCREEN)!;
		const zoomed = { width: 1536, height: 864, ratio: 2.5 };
		expect(cssPxPerMm(scale, zoomed)).toBeCloseTo(((300 / 85.6) * 2) / 2.5, 9);
		expect(cssPxPerMm(scale, { width: 1080, height: 1920, ratio: 2 })).toBeCloseTo(300 / 85.6, 9);
	});

	it('does not hold on another screen', () => {
		const scale = screenScale(300, 85.6, SCREEN)!;
		expect(cssPxPerMm(scale, { width: 2560, height: 1440, ratio: 1 })).toBeNull();
	});

	it('refuses what no screen is like, and what is too short to measure by', () => {
		expect(screenScale(20, 85.6, { ...SCREEN, ratio: 1 })).toBeNull();
		expect(screenScale(4000, 85.6, { ...SCREEN, ratio: 1 })).toBeNull();
		expect(screenScale(100, 20, SCREEN)).toBeNull();
		expect(screenScale(Number.NaN, 85.6, SCREEN)).toBeNull();
	});
});

describe('readScreenScale', () => {
	it('gives back what was kept', () => {
		const scale = screenScale(300, 85.6, SCREEN)!;
		expect(readScreenScale(JSON.stringify(scale))).toEqual(scale);
	});

	it('gives nothing for what was not kept by us', () => {
		for (const kept of [
			null,
			'',
			'{',
			'null',
			'3',
			'{"devicePxPerMm":"4"}',
			'{"devicePxPerMm":400,"longer_px":1920,"shorter_px":1080}',
			'{"devicePxPerMm":4,"longer_px":-1,"shorter_px":1080}',
		])
			expect(readScreenScale(kept), String(kept)).toBeNull();
	});
});
