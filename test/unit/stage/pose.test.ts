import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
	between,
	cappedSpeed,
	DEFAULT_POSE,
	degreesPerPx,
	easeOut,
	glided,
	turned,
	wrapYaw,
	zoomed,
} from '../../../src/lib/stage/pose';
import {
	FLICK_MAX_deg_per_ms,
	GLIDE_MAX_ms,
	GLIDE_TAU_ms,
	TILT_LIMIT_deg,
	ZOOM_MAX,
	ZOOM_MIN,
} from '../../../src/lib/stage/thresholds';

const angle = fc.double({ min: -2000, max: 2000, noNaN: true });

describe('turning', () => {
	test('yaw stays in (-180, 180] and keeps its direction', () => {
		expect(wrapYaw(190)).toBe(-170);
		expect(wrapYaw(-190)).toBe(170);
		expect(wrapYaw(180)).toBe(180);
		expect(wrapYaw(-180)).toBe(180);
		expect(wrapYaw(720)).toBe(0);
		fc.assert(
			fc.property(angle, (yaw) => {
				const w = wrapYaw(yaw);
				expect(w).toBeGreaterThan(-180);
				expect(w).toBeLessThanOrEqual(180);
				expect(Math.cos((w * Math.PI) / 180)).toBeCloseTo(Math.cos((yaw * Math.PI) / 180), 8);
				expect(Math.sin((w * Math.PI) / 180)).toBeCloseTo(Math.sin((yaw * Math.PI) / 180), 8);
			}),
			{ seed: 11 },
		);
	});

	test('tilt stops at its limit and comes straight back', () => {
		const far = turned(DEFAULT_POSE, 0, 1000);
		expect(far.tilt_deg).toBe(TILT_LIMIT_deg);
		expect(turned(far, 0, -10).tilt_deg).toBe(TILT_LIMIT_deg - 10);
		expect(turned(DEFAULT_POSE, 0, -1000).tilt_deg).toBe(-TILT_LIMIT_deg);
	});

	test('many small turns make one large one', () => {
		let pose = { ...DEFAULT_POSE };
		for (let i = 0; i < 100; i++) pose = turned(pose, 3.3, 0.2);
		const once = turned(DEFAULT_POSE, 330, 20);
		expect(pose.yaw_deg).toBeCloseTo(once.yaw_deg, 8);
		expect(pose.tilt_deg).toBeCloseTo(once.tilt_deg, 8);
	});

	test('a drag across the shorter side is half a turn, finer when zoomed in', () => {
		expect(degreesPerPx(850, 700, 1) * 700).toBeCloseTo(180, 8);
		expect(degreesPerPx(400, 700, 1) * 400).toBeCloseTo(180, 8);
		expect(degreesPerPx(850, 700, 4)).toBeCloseTo(degreesPerPx(850, 700, 1) / 2, 8);
		expect(Number.isFinite(degreesPerPx(0, 0, 1))).toBe(true);
	});
});

describe('zoom', () => {
	test('stays within its limits', () => {
		expect(zoomed(DEFAULT_POSE, 100).zoom).toBe(ZOOM_MAX);
		expect(zoomed(DEFAULT_POSE, 0.001).zoom).toBe(ZOOM_MIN);
		expect(zoomed(DEFAULT_POSE, 2).zoom).toBe(2);
	});
	test.each([0, -1, NaN, Infinity])('a factor of %s changes nothing', (factor) => {
		expect(zoomed(DEFAULT_POSE, factor)).toEqual(DEFAULT_POSE);
	});
});

describe('easing', () => {
	test('begins and ends where it should, and never goes back', () => {
		expect(easeOut(0)).toBe(0);
		expect(easeOut(1)).toBe(1);
		expect(easeOut(7)).toBe(1);
		for (let t = 0; t < 1; t += 0.05) expect(easeOut(t + 0.05)).toBeGreaterThan(easeOut(t));
	});
	test('yaw goes the shorter way, zoom is even in ratio', () => {
		const from = { yaw_deg: 170, tilt_deg: 0, zoom: 1 };
		const to = { yaw_deg: -170, tilt_deg: 40, zoom: 4 };
		const half = between(from, to, 0.5);
		expect(Math.abs(half.yaw_deg)).toBeCloseTo(180, 8);
		expect(half.tilt_deg).toBe(20);
		expect(half.zoom).toBeCloseTo(2, 8);
		expect(between(from, to, 1)).toEqual(to);
	});
});

describe('gliding after a flick', () => {
	test('its way is the integral of an exponentially falling speed', () => {
		// numerically: v exp(-t / tau) summed in steps of 0.01 ms over 300 ms
		let way = 0;
		for (let i = 0; i < 30_000; i++) way += Math.exp(-(i + 0.5) / 100 / GLIDE_TAU_ms) / 100;
		expect(glided(1, 300).travel_ms).toBeCloseTo(way, 4);
	});
	test('is over in time whatever the speed, at once when too slow to see', () => {
		expect(glided(FLICK_MAX_deg_per_ms, GLIDE_MAX_ms).over).toBe(true);
		expect(glided(FLICK_MAX_deg_per_ms, 20).over).toBe(false);
		expect(glided(0, 0).over).toBe(true);
		expect(glided(1, 10 * GLIDE_MAX_ms).travel_ms).toBe(glided(1, GLIDE_MAX_ms).travel_ms);
	});
	test('a wild flick is slowed with its direction kept', () => {
		const { yaw, tilt } = cappedSpeed(30, -40);
		expect(Math.hypot(yaw, tilt)).toBeCloseTo(FLICK_MAX_deg_per_ms, 10);
		expect(yaw / tilt).toBeCloseTo(-0.75, 10);
		expect(cappedSpeed(0.1, 0.1)).toEqual({ yaw: 0.1, tilt: 0.1 });
	});
});
