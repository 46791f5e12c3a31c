import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
	cleanLamp,
	DEFAULT_LAMP,
	dialFromLamp,
	lampFrame,
	lampFromDial,
	lampGain,
} from '../../../src/lib/stage/lamp';
import { LAMP_MAX_elevation_deg, LAMP_MIN_elevation_deg } from '../../../src/lib/stage/thresholds';

const dot = (a: readonly number[], b: readonly number[]) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: readonly number[], b: readonly number[]) => [
	a[1] * b[2] - a[2] * b[1],
	a[2] * b[0] - a[0] * b[2],
	a[0] * b[1] - a[1] * b[0],
];
const anyLamp = fc.record({
	azimuth_deg: fc.double({ min: 0, max: 359.999, noNaN: true }),
	elevation_deg: fc.double({ min: LAMP_MIN_elevation_deg, max: LAMP_MAX_elevation_deg, noNaN: true }),
});

test('azimuth runs clockwise from above, elevation rises towards the viewer', () => {
	const dir = (azimuth_deg: number, elevation_deg: number) => lampFrame({ azimuth_deg, elevation_deg }).dir;
	const near = (a: readonly number[], b: number[]) => b.forEach((v, i) => expect(a[i]).toBeCloseTo(v, 9));
	near(dir(0, 0), [0, 1, 0]);
	near(dir(90, 0), [1, 0, 0]);
	near(dir(180, 0), [0, -1, 0]);
	near(dir(270, 0), [-1, 0, 0]);
	near(dir(123, 90), [0, 0, 1]);
	near(dir(90, 30), [Math.sqrt(3) / 2, 0, 0.5]);
});

test('the frame is made of unit vectors at right angles, right-handed', () => {
	fc.assert(
		fc.property(anyLamp, (lamp) => {
			const { side, over, dir } = lampFrame(lamp);
			for (const v of [side, over, dir]) expect(dot(v, v)).toBeCloseTo(1, 9);
			cross(side, over).forEach((v, i) => expect(v).toBeCloseTo(dir[i], 9));
			expect(over[2]).toBe(0);
		}),
	);
});

test('angles out of range are brought in, what is no number becomes the default', () => {
	expect(cleanLamp({ azimuth_deg: -10, elevation_deg: 90 })).toEqual({
		azimuth_deg: 350,
		elevation_deg: LAMP_MAX_elevation_deg,
	});
	expect(cleanLamp({ azimuth_deg: 725, elevation_deg: -4 })).toEqual({
		azimuth_deg: 5,
		elevation_deg: LAMP_MIN_elevation_deg,
	});
	expect(cleanLamp({ azimuth_deg: Number.NaN, elevation_deg: Infinity })).toEqual(DEFAULT_LAMP);
});

test('the dial goes there and back', () => {
	fc.assert(
		fc.property(anyLamp, (lamp) => {
			const { x, y } = dialFromLamp(lamp);
			expect(Math.hypot(x, y)).toBeLessThanOrEqual(1 + 1e-9);
			const back = lampFromDial(x, y, lamp);
			expect(back.elevation_deg).toBeCloseTo(lamp.elevation_deg, 6);
			const turn = Math.abs(back.azimuth_deg - lamp.azimuth_deg) % 360;
			expect(Math.min(turn, 360 - turn)).toBeLessThan(1e-6);
		}),
	);
});

test('the rim is raking light, beyond it too; the middle comes from the front and keeps its azimuth', () => {
	expect(lampFromDial(1, 0, DEFAULT_LAMP)).toEqual({
		azimuth_deg: 90,
		elevation_deg: LAMP_MIN_elevation_deg,
	});
	expect(lampFromDial(0, -7, DEFAULT_LAMP)).toEqual({
		azimuth_deg: 180,
		elevation_deg: LAMP_MIN_elevation_deg,
	});
	expect(lampFromDial(0, 0, { azimuth_deg: 77, elevation_deg: 5 })).toEqual({
		azimuth_deg: 77,
		elevation_deg: LAMP_MAX_elevation_deg,
	});
});

test('the lamp burns brighter the lower it stands, as by default at its default place', () => {
	expect(lampGain(DEFAULT_LAMP)).toBe(1);
	fc.assert(
		fc.property(anyLamp, anyLamp, (a, b) => {
			if (a.elevation_deg > b.elevation_deg) expect(lampGain(a)).toBeLessThanOrEqual(lampGain(b));
			expect(lampGain(a)).toBeGreaterThan(0.5);
			expect(lampGain(a)).toBeLessThanOrEqual(1.7);
		}),
	);
});
