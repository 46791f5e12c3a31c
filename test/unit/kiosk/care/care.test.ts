import { describe, expect, it } from 'vitest';
import { frameSummary } from '../../../../src/lib/kiosk/care/frameSummary';
import { HUNG_AFTER_ms, PageWatch } from '../../../../src/lib/kiosk/care/pageWatch';
import { reloadReason, type PageAge } from '../../../../src/lib/kiosk/care/reloadReason';
import { touchedWithin } from '../../../../src/lib/kiosk/care/touchedWithin';

const HOUR = 3600_000;

describe('PageWatch', () => {
	const watching = () => {
		let now = 0;
		const watch = new PageWatch(now);
		/** looks once a second; how often the server was told */
		const pass = (seconds: number, pings = false) => {
			let told = 0;
			for (let s = 0; s < seconds; s++) {
				now += 1000;
				if (pings && s % 3 === 0) watch.heard();
				if (watch.look(now)) told++;
			}
			return told;
		};
		return { watch, pass, jump: (ms: number) => watch.look((now += ms)) };
	};

	it('is quiet while the page speaks, tells after 15 s of silence, and again every half minute', () => {
		const { pass } = watching();
		expect(pass(600, true)).toBe(0);
		expect(pass(HUNG_AFTER_ms / 1000 - 4)).toBe(0);
		expect(pass(1)).toBe(1);
		expect(pass(29)).toBe(0);
		expect(pass(1)).toBe(1);
	});

	it('begins anew when the page is back', () => {
		const { watch, pass } = watching();
		expect(pass(20)).toBe(1);
		watch.heard();
		expect(pass(14)).toBe(0);
		expect(pass(2)).toBe(1);
	});

	it('takes a machine that slept, and a page that is hidden, for no fault', () => {
		const { watch, pass, jump } = watching();
		expect(jump(8 * HOUR)).toBe(false);
		watch.pause(true);
		expect(pass(3600)).toBe(0);
		watch.pause(false);
		expect(pass(14)).toBe(0);
	});
});

describe('reloadReason', () => {
	const reason = (clock: string, uptime_h: number, over: Partial<PageAge> = {}) =>
		reloadReason({
			uptime_ms: uptime_h * HOUR,
			clock: new Date(clock),
			reloadAt_min: 240,
			jitter_min: 5,
			losses: 0,
			...over,
		});

	it('reloads once a night, after its own minutes', () => {
		expect(reason('2026-03-10T04:04:00', 10)).toBeNull();
		expect(reason('2026-03-10T04:06:00', 10)).toBe('night');
		// loaded after it: until the next night
		expect(reason('2026-03-10T18:00:00', 13.5)).toBeNull();
		expect(reason('2026-03-11T04:06:00', 23.9)).toBe('night');
		// somebody was there all night
		expect(reason('2026-03-10T11:00:00', 20)).toBe('night');
	});

	it('leaves a young page alone, whatever the clock says, and reloads an old one', () => {
		expect(reason('2026-03-10T04:30:00', 0.9)).toBeNull();
		expect(reason('2026-03-10T12:00:00', 36.1, { clock: new Date('2026-03-10T03:00:00') })).toBe('age');
		// a clock that was set forward by years, then back: not every minute
		expect(reason('2031-01-01T12:00:00', 0.5)).toBeNull();
	});

	it('reloads where the graphics keep failing, but not at once again', () => {
		expect(reason('2026-03-10T12:00:00', 0.2, { losses: 3 })).toBe('graphics');
		expect(reason('2026-03-10T12:00:00', 0.2, { losses: 2 })).toBeNull();
		expect(reason('2026-03-10T12:00:00', 0.05, { losses: 9 })).toBeNull();
	});
});

describe('touchedWithin', () => {
	it('is as coarse as it says', () => {
		expect([0, 59_000, 61_000, 6 * 60_000, HOUR, 5 * HOUR, Infinity].map(touchedWithin)).toEqual([
			1,
			1,
			5,
			15,
			60,
			null,
			null,
		]);
	});
});

describe('frameSummary', () => {
	it('gives median and 95th percentile by nearest rank', () => {
		expect(frameSummary([])).toBeNull();
		// 1 .. 100: the median is 50, the 95th percentile 95
		const times = Array.from({ length: 100 }, (_, i) => 100 - i);
		expect(frameSummary(times)).toEqual({ count: 100, median_ms: 50, p95_ms: 95 });
		expect(frameSummary([16.666])).toEqual({ count: 1, median_ms: 16.7, p95_ms: 16.7 });
	});
});
