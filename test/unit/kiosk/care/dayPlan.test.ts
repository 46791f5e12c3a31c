import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { OpenHours } from '../../../../src/lib/content/screens/types';
import { dayPlan } from '../../../../src/lib/kiosk/care/dayPlan';

const HOURS: OpenHours[] = [
	{ days: ['tue', 'wed', 'thu', 'fri'], from_min: 570, dimFrom_min: 1050, until_min: 1080 },
	// a museum's night
	{ days: ['sat'], from_min: 600, until_min: 60 },
];
const at = (clock: string) => dayPlan(HOURS, new Date(clock));

describe('dayPlan', () => {
	it('follows the hours of the day', () => {
		// 10 March 2026 is a Tuesday
		expect(at('2026-03-10T09:29:00')).toBe('dark');
		expect(at('2026-03-10T09:30:00')).toBe('lit');
		expect(at('2026-03-10T17:29:00')).toBe('lit');
		expect(at('2026-03-10T17:30:00')).toBe('dim');
		expect(at('2026-03-10T18:00:00')).toBe('dark');
		expect(at('2026-03-09T12:00:00')).toBe('dark'); // Monday is not named
		expect(dayPlan(null, new Date('2026-03-09T03:00:00'))).toBe('lit');
	});

	it('goes on after midnight where the hours do', () => {
		expect(at('2026-03-14T23:59:00')).toBe('lit');
		expect(at('2026-03-15T00:59:00')).toBe('lit');
		expect(at('2026-03-15T01:00:00')).toBe('dark');
		expect(at('2026-03-14T00:30:00')).toBe('dark'); // Friday ended at six
	});

	it('is lit all day from 0:00 to 24:00', () => {
		const all: OpenHours[] = [{ days: ['mon'], from_min: 0, until_min: 1440 }];
		expect(dayPlan(all, new Date('2026-03-09T00:00:00'))).toBe('lit');
		expect(dayPlan(all, new Date('2026-03-09T23:59:00'))).toBe('lit');
		expect(dayPlan(all, new Date('2026-03-10T00:00:00'))).toBe('dark');
	});

	it('keeps to the clock on the wall when summer time begins and ends', () => {
		// London, 29 March 2026: 00:59 UTC is 00:59, 01:00 UTC is 02:00; 25 October: 01:30 comes twice
		const script = `
			import { dayPlan } from './src/lib/kiosk/care/dayPlan';
			import { reloadReason } from './src/lib/kiosk/care/reloadReason';
			const hours = [{ days: ['sun'], from_min: 90, until_min: 600 }];
			const plan = (utc) => dayPlan(hours, new Date(utc));
			const night = (utc, uptime_h) => reloadReason({ uptime_ms: uptime_h * 3600000, clock: new Date(utc), reloadAt_min: 90, jitter_min: 0, losses: 0 });
			console.log(JSON.stringify([
				plan('2026-03-29T00:59:00Z'), plan('2026-03-29T01:00:00Z'), plan('2026-03-29T08:59:00Z'), plan('2026-03-29T09:00:00Z'),
				plan('2026-10-25T00:29:00Z'), plan('2026-10-25T00:30:00Z'), plan('2026-10-25T09:59:00Z'), plan('2026-10-25T10:00:00Z'),
				night('2026-03-29T00:59:00Z', 8), night('2026-03-29T01:31:00Z', 8),
				night('2026-10-25T00:31:00Z', 8), night('2026-10-25T01:40:00Z', 1.05),
			]));`;
		const said = execFileSync('npx', ['tsx', '-e', script], {
			cwd: path.resolve(__dirname, '../../../..'),
			env: { ...process.env, TZ: 'Europe/London' },
			encoding: 'utf8',
		});
		expect(JSON.parse(said)).toEqual([
			'dark',
			'lit',
			'lit',
			'dark',
			'dark',
			'lit',
			'lit',
			'dark',
			null,
			'night',
			'night',
			null,
		]);
	});
});
