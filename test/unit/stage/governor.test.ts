import { describe, expect, test } from 'vitest';
import {
	CARD_LIMIT_ms,
	createGovernor,
	LADDER,
	LOWER_AFTER_frames,
	RAISE_AFTER_frames,
	REST_LIMIT_ms,
	REST_LOWER_AFTER_frames,
	REST_RAISE_AFTER_frames,
	SOFTWARE_LIMIT_ms,
	SOFTWARE_START_pixels,
	type Governor,
	type Step,
} from '../../../src/lib/stage/governor';
import { STILL_ms } from '../../../src/lib/stage/thresholds';

const HD = 1920 * 1080;

const withClock = (options: { software: boolean; pixels?: number }) => {
	const clock = { t: 1000 };
	const governor = createGovernor({ now: () => clock.t, pixels: HD, ...options });
	return { clock, governor };
};

/** Drags for `frames` frames on a machine that needs `cost(step)` ms a frame; frames wait for a 60 Hz screen. */
const drag = (
	{ governor, clock }: { governor: Governor; clock: { t: number } },
	frames: number,
	cost: (step: Step) => number,
) => {
	for (let i = 0; i < frames; i++) {
		governor.moved();
		if (governor.plan() === 'moving') governor.drawn('moving');
		clock.t += Math.ceil(cost(governor.step) / (1000 / 60)) * (1000 / 60);
	}
};

describe('what to draw', () => {
	test('nothing at first, and nothing at rest', () => {
		const { governor, clock } = withClock({ software: true });
		expect(governor.plan()).toBe('none');
		expect(governor.settled).toBe(true);
		clock.t += 10_000;
		expect(governor.plan()).toBe('none');
	});

	test('a move gives a moving frame, then waiting, then one frame at rest, then nothing', () => {
		const { governor, clock } = withClock({ software: true });
		governor.moved();
		expect(governor.plan()).toBe('moving');
		governor.drawn('moving');
		expect(governor.plan()).toBe('wait');
		expect(governor.settled).toBe(false);
		clock.t += STILL_ms - 1;
		expect(governor.plan()).toBe('wait');
		clock.t += 1;
		expect(governor.plan()).toBe('rest');
		governor.drawn('rest');
		expect(governor.plan()).toBe('none');
		expect(governor.settled).toBe(true);
	});

	test('a single change at rest gives exactly one frame, at rest quality', () => {
		const { governor } = withClock({ software: true });
		governor.changed();
		governor.changed();
		expect(governor.plan()).toBe('rest');
		governor.drawn('rest');
		expect(governor.plan()).toBe('none');
	});

	test('a graphics card that already moves at full quality draws no second frame at rest', () => {
		const { governor, clock } = withClock({ software: false });
		governor.moved();
		expect(governor.plan()).toBe('moving');
		governor.drawn('moving');
		clock.t += STILL_ms;
		expect(governor.plan()).toBe('none');
	});

	test('moving again while waiting puts the frame at rest off', () => {
		const { governor, clock } = withClock({ software: true });
		governor.moved();
		governor.drawn('moving');
		clock.t += STILL_ms - 5;
		governor.moved();
		clock.t += STILL_ms - 5;
		expect(governor.plan()).toBe('moving');
	});
});

describe('how well to draw', () => {
	test('a graphics card starts at full quality, a processor cautiously', () => {
		expect(withClock({ software: false }).governor.step).toEqual(LADDER[0]);
		const { step } = withClock({ software: true }).governor;
		expect(step.shading).toBe('light');
		expect(HD * step.scale ** 2).toBeLessThanOrEqual(SOFTWARE_START_pixels);
	});

	test('a larger screen starts lower, and never below the ladder', () => {
		const hd = withClock({ software: true }).governor.step.scale;
		const huge = withClock({ software: true, pixels: 16 * HD }).governor.step.scale;
		expect(huge).toBeLessThan(hd);
		expect(huge).toBe(LADDER[LADDER.length - 1].scale);
	});

	test('goes down within a few frames and settles where the frame fits', () => {
		const set = withClock({ software: false });
		const cost = (step: Step) => (step.shading === 'full' ? 45 : step.scale > 0.7 ? 30 : 12);
		drag(set, 6 * LOWER_AFTER_frames, cost);
		expect(cost(set.governor.step)).toBeLessThanOrEqual(CARD_LIMIT_ms);
		expect(set.governor.step).toEqual(LADDER.find((step) => cost(step) <= CARD_LIMIT_ms));
	});

	test('two frames far too long are enough to go down', () => {
		const set = withClock({ software: true });
		const before = LADDER.indexOf(set.governor.step);
		drag(set, 4, () => 3 * SOFTWARE_LIMIT_ms);
		expect(LADDER.indexOf(set.governor.step)).toBeGreaterThan(before);
	});

	test('a steady machine keeps its step: no change in 10 minutes of dragging', () => {
		const set = withClock({ software: true });
		drag(set, 36_000, () => 25); // on a 60 Hz screen 25 ms become 33.3: too long at every step
		const settled = set.governor.changes;
		drag(set, 36_000, () => 25);
		expect(set.governor.changes).toBe(settled);
		expect(set.governor.step).toEqual(LADDER[LADDER.length - 1]);
	});

	test('does not swing: between a step that is too slow and one that fits, tries grow rare', () => {
		const set = withClock({ software: true });
		const cost = (step: Step) => (step.scale >= 0.6 ? 30 : 10);
		drag(set, 60 * 60 * 30, cost); // half an hour without a pause
		// 20 s, 40 s, 80 s ... bars: at most seven tries in half an hour, two changes each
		expect(set.governor.changes).toBeLessThanOrEqual(2 * 7 + LADDER.length);
		const before = set.governor.changes;
		drag(set, 60 * 60 * 10, cost);
		expect(set.governor.changes - before).toBeLessThanOrEqual(2);
		expect(cost(set.governor.step)).toBe(10);
	});

	test('comes back up after a busy spell, but only after a long clean run', () => {
		const set = withClock({ software: false });
		drag(set, 200, () => 60);
		expect(set.governor.step).toEqual(LADDER[LADDER.length - 1]);
		drag(set, RAISE_AFTER_frames - 5, () => 8);
		expect(set.governor.step).toEqual(LADDER[LADDER.length - 1]);
		drag(set, 60 * 60 * 5, () => 8);
		expect(set.governor.step).toEqual(LADDER[0]);
	});

	test('pauses between moves are not frame times', () => {
		const set = withClock({ software: true });
		const step = set.governor.step;
		for (let i = 0; i < 50; i++) {
			set.governor.moved();
			expect(set.governor.plan()).toBe('moving');
			set.governor.drawn('moving');
			set.clock.t += 16;
			expect(set.governor.plan()).toBe('wait'); // a tick without a change lies between
			set.clock.t += 60;
		}
		expect(set.governor.median_ms).toBeNull();
		expect(set.governor.step).toEqual(step);
	});

	test('the median is that of the frames given', () => {
		const set = withClock({ software: true });
		const times = [10, 20, 30, 12, 14];
		set.governor.moved();
		set.governor.plan();
		set.governor.drawn('moving');
		for (const ms of times) {
			set.clock.t += ms;
			set.governor.moved();
			set.governor.plan();
			set.governor.drawn('moving');
		}
		expect(set.governor.median_ms).toBe(14);
	});
});

describe('the frame at rest', () => {
	const slow = REST_LIMIT_ms + 1;
	const quick = REST_LIMIT_ms / 2 - 1;

	test('one slow frame changes nothing, several in a row lower its scale', () => {
		const { governor } = withClock({ software: true });
		governor.restTook(slow);
		governor.restTook(quick);
		expect(governor.rest.scale).toBe(1);
		for (let i = 0; i < REST_LOWER_AFTER_frames; i++) governor.restTook(slow);
		expect(governor.rest.scale).toBeLessThan(1);
		expect(governor.rest.shading).toBe('full');
	});

	test('comes back when frames are quick, and stays within its range', () => {
		const { governor } = withClock({ software: true });
		for (let i = 0; i < 100; i++) governor.restTook(slow);
		const lowest = governor.rest.scale;
		expect(lowest).toBeGreaterThanOrEqual(0.5);
		for (let i = 0; i < 10 * REST_RAISE_AFTER_frames; i++) governor.restTook(quick);
		expect(governor.rest.scale).toBe(1);
	});

	test('in between nothing changes, so that it cannot swing', () => {
		const { governor } = withClock({ software: true });
		for (let i = 0; i < REST_LOWER_AFTER_frames; i++) governor.restTook(slow);
		const { scale } = governor.rest;
		for (let i = 0; i < 100; i++) governor.restTook(REST_LIMIT_ms * 0.75);
		expect(governor.rest.scale).toBe(scale);
	});
});
