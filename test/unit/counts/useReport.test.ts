import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CountFacts, CountKind, CountsStore, Tally } from '../../../src/lib/server/counts/countsStore';
import { hideDays } from '../../../src/lib/server/counts/hideDays';
import { useReport, type UseReport } from '../../../src/lib/server/counts/useReport';
import { DWELL_BUCKETS } from '../../../src/lib/domain/use/dwell';

/** A store that only reads. */
function holding(tallies: Tally[]): CountsStore {
	return {
		where: 'memory',
		kind: 'sqlite',
		away: false,
		add: () => Promise.reject(new Error('holding: reads only')),
		tallies: (kind, from = '') =>
			Promise.resolve(
				tallies
					.filter((one) => one.kind === kind && one.day >= from)
					.sort((a, b) => (a.day < b.day ? -1 : 1)),
			),
		forgetBefore: () => Promise.resolve(0),
		close: () => Promise.resolve(),
	};
}
const tally = (kind: CountKind, day: string, facts: CountFacts, count: number): Tally => ({
	kind,
	day,
	facts,
	count,
});
const ended = (day: string, count: number, room = 'compare', step = 'table', by = 'reset') =>
	tally('use-left', day, { room, step, by }, count);
const stays = (counts: readonly number[], room = 'compare', day = '2026-11-23') =>
	counts.map((count, i) => tally('use-room', day, { room, dwell: DWELL_BUCKETS[i] }, count));

describe('useReport', () => {
	it('nothing yet', async () => {
		expect(await useReport(holding([]))).toEqual({
			from: null,
			to: null,
			days: 0,
			visits: 0,
			byDay: [],
			byWeekday: null,
			rooms: [],
			teeth: [],
			left: [],
			ends: { reset: 0, closed: 0 },
			screens: [],
			languages: [],
			settings: [],
		});
	});

	it('a room: stays, their middle, and the share that was the end of a visit, with its interval', async () => {
		const report = await useReport(
			holding([
				...stays([6, 9, 10, 8, 7, 0]),
				ended('2026-11-23', 22),
				ended('2026-11-23', 9, 'start', 'choosing'),
			]),
		);
		const [compare] = report.rooms;
		expect(compare).toMatchObject({ room: 'compare', stays: 40, left: 22 });
		expect(compare.dwell).toEqual({ counts: [6, 9, 10, 8, 7, 0], median: '30-60s' });
		// Wilson 95 % for 22/40 = .398 to .693: E. B. Wilson 1927, computed from the formula
		expect(compare.share!.p).toBeCloseTo(0.55, 10);
		expect(compare.share!.low).toBeCloseTo(0.398, 3);
		expect(compare.share!.high).toBeCloseTo(0.693, 3);
		expect(report.visits).toBe(31);
	});

	it('few stays: no middle, no share', async () => {
		const [room] = (await useReport(holding([...stays([5, 0, 4]), ended('2026-11-23', 5)]))).rooms;
		expect(room.dwell.median).toBeNull();
		expect(room.share).toBeNull();
	});

	it('every day of the calendar, over a change of clocks; weekdays only after twelve days', async () => {
		// 2026-10-25: clocks go back in Europe; a Sunday
		const few = await useReport(holding([ended('2026-10-24', 8), ended('2026-10-27', 9)]));
		expect(few.byDay).toEqual([
			{ day: '2026-10-24', count: 8 },
			{ day: '2026-10-25', count: 0 },
			{ day: '2026-10-26', count: 0 },
			{ day: '2026-10-27', count: 9 },
		]);
		expect(few.byWeekday).toBeNull();
		const days = Array.from({ length: 14 }, (_, i) => `2026-11-${String(i + 2).padStart(2, '0')}`);
		// Mondays (2 and 9) closed
		const open = days.filter((day) => !/-(02|09)$/.test(day));
		const many = await useReport(holding(open.map((day, i) => ended(day, 10 + i))));
		expect(many.days).toBe(12);
		expect(many.byWeekday!.map(({ days }) => days)).toEqual([0, 2, 2, 2, 2, 2, 2]);
		// Tuesdays 10 and 16
		expect(many.byWeekday![1].mean).toBe(13);
		expect(many.byWeekday![0].mean).toBe(0);
	});

	it('the period begins where it is told to', async () => {
		const store = holding([ended('2026-11-01', 10), ended('2026-11-20', 7)]);
		expect(await useReport(store, '2026-11-10')).toMatchObject({ visits: 7, days: 1, from: '2026-11-20' });
	});

	it('teeth: what visitors laid there comes first, apart from what lay there', async () => {
		const tooth = (specimen: string, laid: boolean, count: number) =>
			tally('use-tooth', '2026-11-23', { room: 'compare', specimen, laid, dwell: '1-2min' }, count);
		const { teeth } = await useReport(
			holding([tooth('a', false, 90), tooth('a', true, 5), tooth('b', true, 30), ended('2026-11-23', 9)]),
		);
		expect(teeth.map(({ specimen, laid, lay }) => [specimen, laid, lay])).toEqual([
			['b', 30, 0],
			['a', 5, 90],
		]);
		expect(teeth[0].dwell.median).toBe('1-2min');
		expect(teeth[0].days).toEqual([{ day: '2026-11-23', count: 30 }]);
	});

	it('screens by name, most used first; those without a name are not told', async () => {
		const at = (screen: string, count: number) =>
			tally('use-left', '2026-11-23', { room: 'start', step: 'choosing', by: 'reset', screen }, count);
		const { screens } = await useReport(holding([at('hall', 6), at('foyer', 60), ended('2026-11-23', 9)]));
		expect(screens).toEqual([
			{ screen: 'foyer', visits: 60 },
			{ screen: 'hall', visits: 6 },
		]);
	});

	it('no count from 1 to 4 can be worked out from what is shown', async () => {
		const cell = fc.record({
			day: fc.constantFrom('2026-11-23', '2026-11-24', '2026-11-25', '2026-11-30'),
			room: fc.constantFrom('compare', 'quiz', 'feeding'),
			count: fc.integer({ min: 1, max: 14 }),
			at: fc.nat(5),
			by: fc.constantFrom('reset', 'closed'),
		});
		await fc.assert(
			fc.asyncProperty(fc.array(cell, { maxLength: 14 }), async (cells) => {
				const steps: Record<string, string> = { compare: 'table', quiz: 'question', feeding: 'size' };
				const report = await useReport(
					holding(
						cells.flatMap(({ day, room, count, at, by }) => [
							ended(day, count, room, steps[room], by),
							// everybody who left a room was in it
							tally('use-room', day, { room, dwell: DWELL_BUCKETS[at] }, count),
						]),
					),
				);
				for (const found of given(report))
					expect(found === 0 || found >= 5, JSON.stringify(report)).toBe(true);
			}),
			{ numRuns: 300, seed: 471 },
		);
	});
});

/** What somebody finds who takes what is shown away from the sums that are shown. */
function given(report: UseReport): number[] {
	const found: number[] = [];
	const rest = (whole: number | null, parts: readonly (number | null)[]) => {
		found.push(...parts.filter((part) => part !== null));
		if (whole === null) return;
		found.push(whole);
		if (parts.filter((part) => part === null).length === 1)
			found.push(whole - parts.reduce((sum: number, part) => sum + (part ?? 0), 0));
	};
	rest(
		report.visits,
		report.byDay.map(({ count }) => count),
	);
	rest(
		report.visits,
		report.rooms.map((room) => {
			const steps = report.left.filter((one) => one.room === room.room).map(({ count }) => count);
			const sum = steps.every((step) => step !== null) ? steps.reduce((all, step) => all + step, 0) : null;
			return room.left ?? sum;
		}),
	);
	rest(report.visits, [report.ends.reset, report.ends.closed]);
	for (const { room, left } of report.rooms)
		rest(
			left,
			report.left.filter((one) => one.room === room).map(({ count }) => count),
		);
	for (const { stays, dwell, left, days } of report.rooms) {
		rest(stays, dwell.counts);
		rest(
			stays,
			days.map(({ count }) => count),
		);
		if (stays !== null && left !== null) found.push(left, stays - left);
	}
	return found;
}

describe('hideDays', () => {
	it('neither the sum of the days nor that of a weekday tells a small one', () => {
		// two weeks of Monday and Tuesday
		expect(hideDays([20, 30, 3, 40], [0, 1, 0, 1])).toEqual([null, 30, null, 40]);
		// the only Monday: another day goes as well
		expect(hideDays([3, 30, 40], [0, 1, 1])).toEqual([null, null, 40]);
		expect(hideDays([0, 30, 40], [0, 1, 1])).toEqual([0, 30, 40]);
	});
});
