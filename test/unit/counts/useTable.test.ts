import { parse } from 'csv-parse/sync';
import { expect, it } from 'vitest';
import type { UseReport } from '../../../src/lib/server/counts/useReport';
import { usePeriod } from '../../../src/lib/server/counts/usePeriod';
import { useTable } from '../../../src/lib/server/counts/useTable';

const report: UseReport = {
	from: '2026-11-23',
	to: '2026-11-25',
	days: 2,
	visits: 20,
	byDay: [
		{ day: '2026-11-23', count: 15 },
		{ day: '2026-11-24', count: 0 },
		{ day: '2026-11-25', count: 5 },
	],
	byWeekday: null,
	rooms: [
		{
			room: 'quiz',
			stays: 12,
			dwell: { counts: [0, 0, 0, 0, 12, 0], median: '2-5min' },
			left: null,
			share: null,
			days: [{ day: '2026-11-23', count: 12 }],
		},
	],
	teeth: [
		{
			specimen: 'globidens-1',
			laid: 6,
			lay: null,
			dwell: { counts: [null, null, 0, 0, 0, 0], median: null },
			days: [{ day: '2026-11-23', count: null }],
		},
	],
	left: [{ room: 'quiz', step: 'question', count: 9 }],
	ends: { reset: 20, closed: 0 },
	screens: [{ screen: 'hall', visits: 20 }],
	languages: [{ language: 'fr', count: 7 }],
	settings: [{ setting: 'calm', count: null }],
};

it('one line a count; what is hidden is empty, and days without any are left out', () => {
	for (const delimiter of [',', ';'] as const) {
		const text = useTable(report, delimiter);
		expect(text.startsWith('\uFEFFday')).toBe(true);
		const [head, ...rows] = parse(text, { bom: true, delimiter }) as string[][];
		expect(head).toEqual(['day', 'what', 'room', 'specimen', 'detail', 'count']);
		expect(rows).toContainEqual(['2026-11-25', 'visits', '', '', '', '5']);
		expect(rows).toContainEqual(['2026-11-23', 'stays', 'quiz', '', '', '12']);
		expect(rows).toContainEqual(['2026-11-23', 'tooth', '', 'globidens-1', '', '']);
		expect(rows).toContainEqual(['', 'dwell', 'quiz', '', '2-5min', '12']);
		expect(rows).toContainEqual(['', 'tooth', '', 'globidens-1', 'lay there already', '']);
		expect(rows).toContainEqual(['', 'left', 'quiz', '', 'question', '9']);
		expect(rows).toContainEqual(['', 'end', '', '', 'page closed', '0']);
		expect(rows).toContainEqual(['', 'setting', '', '', 'calm', '']);
		expect(rows.filter(([day]) => day === '2026-11-24')).toEqual([]);
	}
});

it('a table without counts has its head', () => {
	expect(useTable(null, ',')).toBe('\uFEFFday,what,room,specimen,detail,count\r\n');
});

it('periods: those offered, today among their days; any other is the usual one', () => {
	const today = new Date(2026, 10, 25, 9);
	expect(usePeriod('7', today)).toEqual({ days: 7, from: '2026-11-19' });
	expect(usePeriod('0', today)).toEqual({ days: 0, from: undefined });
	for (const odd of [null, '', '3', '-7', '28; drop table', '1e9'])
		expect(usePeriod(odd, today)).toEqual({ days: 28, from: '2026-10-29' });
});
