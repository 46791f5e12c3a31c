import { describe, expect, test } from 'vitest';
import type { ShapeRef } from '../../../src/lib/stage/api';
import {
	advance,
	createHandledView,
	easeTo,
	endMotion,
	heading,
	setFit,
	shownPxPerMm,
	type HandledView,
} from '../../../src/lib/stage/handledView';
import { DEFAULT_POSE } from '../../../src/lib/stage/pose';
import { EASE_ms, GLIDE_MAX_ms } from '../../../src/lib/stage/thresholds';

const shape: ShapeRef = {
	url: '/shapes/a.glb',
	preservation: 'tan',
	bounds: { min: [-5, -10, -5], max: [5, 30, 5] },
	crownHeight_mm: 30,
};
const make = (): HandledView => {
	const none = {} as HTMLElement;
	const materials = {} as HandledView['materials'];
	return { ...createHandledView(none, materials), shape };
};

describe('a view', () => {
	test('stands still unless told to move', () => {
		const view = make();
		expect(advance(view, 1000)).toBe(false);
		expect(view.pose).toEqual(DEFAULT_POSE);
	});

	test('comes to its end at once when nothing may move', () => {
		const view = make();
		const to = { yaw_deg: 60, tilt_deg: -20, zoom: 3 };
		easeTo(view, to, 1000, false);
		advance(view, 1000 + EASE_ms / 4);
		expect(endMotion(view)).toBe(true);
		expect(view.pose).toEqual(to);
		expect(advance(view, 1000 + EASE_ms / 2)).toBe(false);
		view.glide = { from: view.pose, yaw: 1, tilt: 0, since_ms: 2000 };
		expect(endMotion(view)).toBe(true);
		expect(view.pose).toEqual(to);
		expect(endMotion(view)).toBe(false);
	});

	test('eases to a pose in its time and then stands exactly there', () => {
		const view = make();
		const to = { yaw_deg: 60, tilt_deg: -20, zoom: 3 };
		easeTo(view, to, 1000, false);
		expect(heading(view)).toEqual(to);
		expect(advance(view, 1000 + EASE_ms / 2)).toBe(true);
		expect(view.pose.yaw_deg).toBeGreaterThan(DEFAULT_POSE.yaw_deg);
		expect(view.pose.yaw_deg).toBeLessThan(60);
		expect(advance(view, 1000 + EASE_ms)).toBe(true);
		expect(view.pose).toEqual(to);
		expect(advance(view, 1000 + EASE_ms + 16)).toBe(false);
	});

	test('jumps at once for those who want less motion', () => {
		const view = make();
		const to = { yaw_deg: 60, tilt_deg: -20, zoom: 3 };
		easeTo(view, to, 1000, true);
		expect(view.pose).toEqual(to);
		expect(advance(view, 1016)).toBe(false);
	});

	test('glides after a flick, slower and slower, and stops in time', () => {
		const view = make();
		view.glide = { from: view.pose, yaw: 0.5, tilt: 0, since_ms: 0 };
		let [last, lastStep, t] = [view.pose.yaw_deg, Infinity, 0];
		while (view.glide) {
			t += 20;
			advance(view, t);
			const step = view.pose.yaw_deg - last;
			expect(step).toBeGreaterThan(0);
			expect(step).toBeLessThan(lastStep);
			[last, lastStep] = [view.pose.yaw_deg, step];
		}
		expect(t).toBeLessThanOrEqual(GLIDE_MAX_ms);
		expect(advance(view, t + 20)).toBe(false);
	});
});

describe('its scale', () => {
	test('is fit times zoom, and null while empty', () => {
		const view = make();
		expect(shownPxPerMm(view, 0)).toBeNull();
		setFit(view, 8, 0, false);
		view.pose = { ...view.pose, zoom: 2 };
		expect(shownPxPerMm(view, 0)).toBe(16);
		view.shape = null;
		expect(shownPxPerMm(view, 0)).toBeNull();
	});

	test('eases from the size on screen to a new fit, also from the middle of an older ease', () => {
		const view = make();
		setFit(view, 8, 0, false);
		expect(setFit(view, 4, 100, false)).toBe(true);
		expect(shownPxPerMm(view, 100)).toBeCloseTo(8, 8);
		const half = shownPxPerMm(view, 100 + EASE_ms / 2)!;
		expect(half).toBeGreaterThan(4);
		expect(half).toBeLessThan(8);
		setFit(view, 10, 100 + EASE_ms / 2, false);
		expect(shownPxPerMm(view, 100 + EASE_ms / 2)).toBeCloseTo(half, 8);
		advance(view, 100 + 2 * EASE_ms);
		expect(shownPxPerMm(view, 100 + 2 * EASE_ms)).toBe(10);
		expect(advance(view, 100 + 3 * EASE_ms)).toBe(false);
	});

	test('the same fit again is no change', () => {
		const view = make();
		setFit(view, 8, 0, false);
		expect(setFit(view, 8, 10, false)).toBe(false);
		expect(advance(view, 20)).toBe(false);
	});
});
