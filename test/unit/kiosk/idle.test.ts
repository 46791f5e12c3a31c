import { describe, expect, it } from 'vitest';
import { Idle, type IdleTimes } from '../../../src/lib/kiosk/idle.svelte';

/** A clock that ticks only when told, and may jump between ticks. */
function table(over: { times?: Partial<IdleTimes>; clears?: boolean[]; atStart?: boolean } = {}) {
	let now_ms = 5_000;
	let tick: () => void = () => undefined;
	let period_ms = 0;
	const seen = { cleared: 0, atStart: over.atStart ?? false, busy: false, stopped: false };
	const clears = over.clears ?? [];
	const idle = new Idle({
		times: () => ({ warnAfter_s: 100, resetAfterWarning_s: 25, ...over.times }),
		now: () => now_ms,
		every(period, call) {
			period_ms = period;
			tick = call;
			return () => {
				tick = () => undefined;
				seen.stopped = true;
			};
		},
		atStart: () => seen.atStart,
		busy: () => seen.busy,
		clear() {
			seen.cleared += 1;
			const done = clears.shift() ?? true;
			if (done) seen.atStart = true;
			return Promise.resolve(done);
		},
	});
	const end = idle.watch();
	return {
		idle,
		seen,
		end,
		/** lets seconds pass as they usually do */
		async pass(seconds: number) {
			for (let t = 0; t < seconds * 1000; t += period_ms) {
				now_ms += period_ms;
				tick();
				await Promise.resolve();
				await Promise.resolve();
			}
		},
		/** sets the clock, then ticks once, as after a sleep */
		async jump(seconds: number) {
			now_ms += seconds * 1000;
			tick();
			await Promise.resolve();
		},
	};
}

describe('Idle', () => {
	it('asks after the time of the exhibit, counts down, and clears', async () => {
		const { idle, seen, pass } = table();
		await pass(99.5);
		expect(idle.state).toBe('awake');
		await pass(1);
		expect(idle.state).toBe('asking');
		expect(idle.left_s).toBe(25);
		await pass(10);
		expect(idle.left_s).toBe(15);
		expect(seen.cleared).toBe(0);
		await pass(15.5);
		expect(seen.cleared).toBe(1);
		expect(idle.state).toBe('resting');
	});

	it('never warns for less than 20 s (WCAG 2.2, 2.2.1), whatever the exhibit says', async () => {
		const { idle, seen, pass } = table({ times: { resetAfterWarning_s: 3 } });
		await pass(100.5);
		expect(idle.left_s).toBe(20);
		await pass(19);
		expect(seen.cleared).toBe(0);
		await pass(2);
		expect(seen.cleared).toBe(1);
	});

	it('goes on after one touch, more than ten times (2.2.1)', async () => {
		const { idle, seen, pass } = table();
		for (let i = 0; i < 25; i += 1) {
			await pass(110);
			expect(idle.state).toBe('asking');
			idle.stay();
			expect(idle.state).toBe('awake');
		}
		expect(seen.cleared).toBe(0);
	});

	it('begins anew with every touch; while asking a touch gives the whole time again', async () => {
		const { idle, seen, pass } = table();
		for (let i = 0; i < 5; i += 1) {
			await pass(90);
			idle.touched();
		}
		expect(idle.state).toBe('awake');
		await pass(120);
		expect(idle.left_s).toBeLessThan(10);
		idle.touched();
		expect(idle.state).toBe('asking');
		expect(idle.left_s).toBe(25);
		await pass(20);
		expect(seen.cleared).toBe(0);
	});

	it('waits longer for a class, and from its end on as usual', async () => {
		const { idle, pass } = table();
		const release = idle.hold(300);
		await pass(299);
		expect(idle.state).toBe('awake');
		release();
		await pass(99);
		expect(idle.state).toBe('awake');
		await pass(2);
		expect(idle.state).toBe('asking');
	});

	it('does not ask while words are read aloud', async () => {
		const { idle, seen, pass } = table();
		seen.busy = true;
		await pass(400);
		expect(idle.state).toBe('awake');
		seen.busy = false;
		await pass(99);
		expect(idle.state).toBe('awake');
	});

	it('asks all the same when a voice never ends', async () => {
		const { idle, seen, pass } = table();
		seen.busy = true;
		await pass(600 + 99);
		expect(idle.state).toBe('awake');
		await pass(3);
		expect(idle.state).toBe('asking');
	});

	it('takes a sleep or a clock set forward for no more than a moment', async () => {
		const { idle, seen, pass, jump } = table();
		await pass(50);
		await jump(8 * 3600);
		expect(idle.state).toBe('awake');
		await pass(40);
		expect(idle.state).toBe('awake');
		await pass(15);
		expect(idle.state).toBe('asking');
		await jump(8 * 3600);
		expect(idle.state).toBe('asking');
		expect(seen.cleared).toBe(0);
	});

	it('does not get stuck when the clock is set back', async () => {
		const { idle, pass, jump } = table();
		await pass(50);
		await jump(-30 * 24 * 3600);
		await pass(51);
		expect(idle.state).toBe('asking');
		await jump(-3600);
		await pass(26);
		expect(idle.state).toBe('resting');
	});

	it('does not count while the page is hidden; who brings it back is here', async () => {
		const { idle, seen, pass } = table();
		await pass(95);
		idle.hide(true);
		await pass(3600);
		expect(idle.state).toBe('awake');
		idle.hide(false);
		await pass(95);
		expect(idle.state).toBe('awake');
		await pass(10);
		expect(idle.state).toBe('asking');
		idle.hide(true);
		await pass(3600);
		idle.hide(false);
		expect(idle.left_s).toBe(25);
		expect(seen.cleared).toBe(0);
		await pass(26);
		expect(idle.state).toBe('resting');
	});

	it('tries again while it cannot be cleared, and stops trying when somebody comes', async () => {
		const { idle, seen, pass } = table({ clears: [false, false, true] });
		await pass(126);
		expect(idle.state).toBe('clearing');
		await pass(6);
		expect(seen.cleared).toBe(2);
		await pass(6);
		expect(seen.cleared).toBe(3);
		expect(idle.state).toBe('resting');

		const other = table({ clears: [false, false, false] });
		await other.pass(126);
		other.idle.touched();
		expect(other.idle.state).toBe('awake');
		await other.pass(60);
		expect(other.seen.cleared).toBe(1);
	});

	it('rests on an untouched start screen without a question, and wakes only when told', async () => {
		const { idle, seen, pass } = table({ atStart: true });
		await pass(39);
		expect(idle.state).toBe('awake');
		await pass(2);
		expect(idle.state).toBe('resting');
		idle.touched();
		expect(idle.state).toBe('resting');
		await pass(3600);
		expect(idle.state).toBe('resting');
		expect(seen.cleared).toBe(0);
		idle.stay();
		expect(idle.state).toBe('awake');
	});

	it('wakes when the start screen is left by another way', async () => {
		const { idle, seen, pass } = table({ atStart: true });
		await pass(41);
		seen.atStart = false;
		await pass(1);
		expect(idle.state).toBe('awake');
	});

	it('ends with the page', async () => {
		const { idle, seen, pass, end } = table();
		await pass(110);
		end();
		expect(seen.stopped).toBe(true);
		expect(idle.state).toBe('awake');
	});
});
