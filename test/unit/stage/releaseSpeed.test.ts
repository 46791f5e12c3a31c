import { expect, test } from 'vitest';
import { releaseSpeed } from '../../../src/lib/stage/releaseSpeed';
import { FLICK_STALE_ms } from '../../../src/lib/stage/thresholds';

const steady = (n: number, dt: number, dx: number, dy: number, from = 0) =>
	Array.from({ length: n }, (_, i) => ({ t: from + i * dt, dt, dx, dy }));

test('a steady finger is let go at its own speed, whatever the rate of events', () => {
	for (const dt of [4, 8, 16]) {
		const samples = steady(30, dt, 1.5 * dt, -0.5 * dt);
		const { vx, vy } = releaseSpeed(samples, samples[samples.length - 1].t);
		expect(vx).toBeCloseTo(1.5, 8);
		expect(vy).toBeCloseTo(-0.5, 8);
	}
});

test('a finger that rested before it lifted has no speed', () => {
	const samples = steady(20, 16, 10, 0);
	expect(releaseSpeed(samples, samples[19].t + FLICK_STALE_ms + 1)).toEqual({ vx: 0, vy: 0 });
});

test('no event is no flick; a single one counts by the time since the finger came down', () => {
	expect(releaseSpeed([], 100)).toEqual({ vx: 0, vy: 0 });
	expect(releaseSpeed([{ t: 100, dt: 40, dx: 50, dy: -10 }], 110)).toEqual({ vx: 1, vy: -0.2 });
});

test('events in the same millisecond do not make it infinite', () => {
	const { vx } = releaseSpeed(steady(3, 0, 4, 0, 100), 100);
	expect(Number.isFinite(vx)).toBe(true);
});
