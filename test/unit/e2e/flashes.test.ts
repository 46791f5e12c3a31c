import { describe, expect, it } from 'vitest';
import { AREA_SHARE, flashes, type Frame } from '../../e2e/flashes';

// Thresholds: WCAG 2.2, success criterion 2.3.1 and "general flash and red flash thresholds" (w3c/wcag at 58080bdb).
const [W, H] = [48, 27];
type Rgb = readonly [number, number, number];

/** `frames` a second for `seconds`; every pixel of the part that `where` names shows `colour` at its time. */
function film(
	colour: (at_s: number) => Rgb,
	options: { seconds?: number; share?: number; fps?: number } = {},
): Frame[] {
	const { seconds = 2, share = 1, fps = 30 } = options;
	return Array.from({ length: seconds * fps }, (_, i) => {
		const rgb = new Uint8Array(W * H * 3).fill(20);
		for (let y = 0; y < H; y += 1)
			for (let x = 0; x < W * share; x += 1) rgb.set(colour(i / fps), (y * W + x) * 3);
		return { at_s: i / fps, rgb };
	});
}
const blink =
	(hertz: number, on: Rgb, off: Rgb) =>
	(at_s: number): Rgb =>
		(at_s * hertz) % 1 < 0.5 ? on : off;
const WHITE = [255, 255, 255] as const;
const BLACK = [0, 0, 0] as const;

describe('flashes', () => {
	it('three a second pass, five do not', () => {
		expect(flashes(film(blink(3, WHITE, BLACK)), W, H).general).toBe(0);
		const five = flashes(film(blink(5, WHITE, BLACK)), W, H);
		expect(five.general).toBe(1);
		expect(five.most).toBeGreaterThanOrEqual(5);
	});
	it('a swing of luminance under 10 % is no flash, one just over it is', () => {
		// linear luminance of grey 0 and 88 is 0 and 0.0976; of 90 it is 0.1022
		expect(flashes(film(blink(6, [88, 88, 88], BLACK)), W, H).general).toBe(0);
		expect(flashes(film(blink(6, [90, 90, 90], BLACK)), W, H).general).toBe(1);
	});
	it('between bright states there is no flash: the darker one must be below 0.80', () => {
		// grey 231 is 0.799, grey 232 is 0.807
		expect(flashes(film(blink(6, WHITE, [232, 232, 232])), W, H).general).toBe(0);
		expect(flashes(film(blink(6, WHITE, [230, 230, 230])), W, H).general).toBe(1);
	});
	it('a small part of the field may flash', () => {
		expect(flashes(film(blink(6, WHITE, BLACK), { share: 0.05 }), W, H).general).toBeLessThan(AREA_SHARE);
		expect(flashes(film(blink(6, WHITE, BLACK), { share: 0.1 }), W, H).general).toBeGreaterThanOrEqual(
			AREA_SHARE,
		);
	});
	it('a slow rise and fall, and a picture that stays, are none', () => {
		const slow = (at_s: number): Rgb => {
			const grey = Math.round(127 + 127 * Math.sin(at_s * Math.PI));
			return [grey, grey, grey];
		};
		expect(flashes(film(slow, { seconds: 4 }), W, H)).toMatchObject({ general: 0, red: 0 });
		expect(
			flashes(
				film(() => WHITE),
				W,
				H,
			),
		).toEqual({ general: 0, red: 0, most: 0 });
	});
	it('a flicker that rises step by step is counted by its turns, not its steps', () => {
		const stairs = (at_s: number): Rgb => {
			const grey = Math.min(255, Math.round(at_s * 30) * 9);
			return [grey, grey, grey];
		};
		expect(flashes(film(stairs), W, H).most).toBe(0.5);
	});
	it('saturated red against black flashes although it is dark', () => {
		// luminance of red 150 is 0.064: no general flash
		const { general, red } = flashes(film(blink(6, [150, 0, 0], BLACK)), W, H);
		expect({ general, red }).toEqual({ general: 0, red: 1 });
		expect(flashes(film(blink(6, [150, 120, 90], BLACK)), W, H).red).toBe(0);
	});
});
