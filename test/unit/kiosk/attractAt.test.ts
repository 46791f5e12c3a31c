import { describe, expect, it } from 'vitest';
import { attractAt, pairAt, STEP_s } from '../../../src/lib/kiosk/attractAt';
import { LAMP_MAX_elevation_deg, LAMP_MIN_elevation_deg } from '../../../src/lib/stage/thresholds';

describe('attractAt', () => {
	it('moves slowly and without a jump, also from step to step', () => {
		const dt = 0.02;
		for (let t = 0; t < 10 * STEP_s; t += dt) {
			const a = attractAt(t, 3);
			const b = attractAt(t + dt, 3);
			expect(b.yaw_deg - a.yaw_deg).toBeGreaterThanOrEqual(0);
			expect((b.yaw_deg - a.yaw_deg) / dt).toBeLessThan(40);
			expect(Math.abs(b.lamp.azimuth_deg - a.lamp.azimuth_deg) / dt).toBeLessThan(20);
		}
	});

	it('comes to rest within 5 s of each start (WCAG 2.2, 2.2.2), and then stands', () => {
		for (let step = 0; step < 12; step += 1) {
			expect(attractAt(step * STEP_s + 5, 3).turning).toBe(false);
			const resting = attractAt(step * STEP_s + 5, 3);
			const later = attractAt((step + 1) * STEP_s - 0.01, 3);
			expect(later.yaw_deg).toBeCloseTo(resting.yaw_deg, 9);
			expect(later.lamp).toEqual(resting.lamp);
		}
	});

	it('asks in every language before the teeth change', () => {
		const steps = Array.from({ length: 9 }, (_, i) => attractAt(i * STEP_s, 3));
		expect(steps.map(({ language }) => language)).toEqual([0, 1, 2, 0, 1, 2, 0, 1, 2]);
		expect(steps.map(({ scene }) => scene)).toEqual([0, 0, 0, 1, 1, 1, 2, 2, 2]);
	});

	it('moves what is bright from step to step, and no place comes twice within a minute', () => {
		const shifts = Array.from({ length: 7 }, (_, i) => attractAt(i * STEP_s, 2).shift.join());
		expect(new Set(shifts).size).toBe(7);
		for (let i = 0; i < 60; i += 1) {
			const [x, y] = attractAt(i * STEP_s, 2).shift;
			expect(Math.max(Math.abs(x), Math.abs(y))).toBeLessThanOrEqual(4);
		}
	});

	it('keeps the lamp where the stage lets it stand, and bears any time', () => {
		for (const t of [-1e9, 0, 1, 86_400 * 365, 1e12]) {
			const { lamp, left_s, step } = attractAt(t, 1);
			expect(lamp.elevation_deg).toBeGreaterThanOrEqual(LAMP_MIN_elevation_deg);
			expect(lamp.elevation_deg).toBeLessThanOrEqual(LAMP_MAX_elevation_deg);
			expect(left_s).toBeGreaterThan(0);
			expect(step).toBeGreaterThanOrEqual(0);
		}
	});
});

describe('pairAt', () => {
	it('shows two different teeth, and each tooth sooner or later', () => {
		for (const count of [2, 3, 4, 5, 8, 9, 16]) {
			const seen = new Set<number>();
			for (let scene = 0; scene < 4 * count; scene += 1) {
				const [a, b] = pairAt(scene, count);
				expect(a).not.toBe(b);
				expect(Math.max(a, b)).toBeLessThan(count);
				seen.add(a).add(b);
			}
			expect(seen.size).toBe(count);
		}
	});

	it('shows what there is', () => {
		expect(pairAt(5, 1)).toEqual([0]);
		expect(pairAt(5, 0)).toEqual([]);
	});
});
