import { expect, test } from 'vitest';
import { REST_LIMIT_ms } from '../../../src/lib/stage/governor';
import { glided } from '../../../src/lib/stage/pose';
import * as t from '../../../src/lib/stage/thresholds';

test('full quality stands within the 300 ms that the design allows', () => {
	expect(t.STILL_ms + REST_LIMIT_ms).toBeLessThanOrEqual(300);
});

test('the default pose is a three-quarter turn inside the limits', () => {
	expect(Math.abs(t.DEFAULT_YAW_deg)).toBeGreaterThan(20);
	expect(Math.abs(t.DEFAULT_YAW_deg)).toBeLessThan(70);
	expect(Math.abs(t.DEFAULT_TILT_deg)).toBeLessThan(t.TILT_LIMIT_deg);
});

test('a finger may wander further than a mouse, and a second tap further than a drag begins', () => {
	expect(t.DRAG_START_px.touch).toBeGreaterThan(t.DRAG_START_px.mouse);
	expect(t.DOUBLE_TAP_px).toBeGreaterThan(t.DRAG_START_px.touch);
});

test('the fastest flick is spent, to about a degree, when the glide is cut off', () => {
	const left_deg =
		t.FLICK_MAX_deg_per_ms * t.GLIDE_TAU_ms - t.FLICK_MAX_deg_per_ms * glided(1, t.GLIDE_MAX_ms).travel_ms;
	expect(left_deg).toBeGreaterThan(0);
	expect(left_deg).toBeLessThan(1.2);
	expect(t.FLICK_MAX_deg_per_ms * Math.exp(-t.GLIDE_MAX_ms / t.GLIDE_TAU_ms)).toBeLessThan(0.01);
});

test('zoom limits lie on both sides of 1, and a notch of the wheel is a small step', () => {
	expect(t.ZOOM_MIN).toBeLessThan(1);
	expect(t.ZOOM_MAX).toBeGreaterThan(1);
	expect(Math.exp(100 * t.WHEEL_ZOOM_PER_px)).toBeLessThan(1.3);
});
