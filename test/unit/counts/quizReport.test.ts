import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { quizReport } from '../../../src/lib/server/counts/quizReport';
import { sqliteCounts } from '../../../src/lib/server/counts/sqliteCounts';

const folder = mkdtempSync(path.join(tmpdir(), 'report-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
let made = 0;

/** The report of one question whose options were chosen so often; `b` is right. */
async function reportOf(counts: Record<string, number>, hinted = 0) {
	const store = sqliteCounts(path.join(folder, `${(made += 1)}.db`));
	let left = hinted;
	const entries = Object.entries(counts).flatMap(([option, count]) =>
		Array.from({ length: count }, () => ({
			kind: 'quiz-answer' as const,
			facts: { question: 'choose-x', option, right: option === 'b', hinted: left-- > 0, band: '7-11' },
		})),
	);
	await store.add('batch', '2026-11-25', entries);
	const report = await quizReport(store);
	await store.close();
	return { ...report, one: report.questions[0] };
}

/** Every way in which a report would give a count back to somebody who can add, subtract and multiply. */
function given(one: Awaited<ReturnType<typeof reportOf>>['one']): number[] {
	const shown = one.options.flatMap(({ count }) => (count === null ? [] : [count]));
	const found = [...shown];
	const hidden = one.options.filter(({ count }) => count === null);
	if (one.answers !== null && hidden.length === 1)
		found.push(one.answers - shown.reduce((sum, count) => sum + count, 0));
	if (one.answers !== null && one.p !== null) found.push(Math.round(one.p * one.answers));
	for (const { share } of one.options)
		if (share !== null && one.answers !== null) found.push(Math.round(share * one.answers));
	return found;
}

describe('quizReport', () => {
	it('dataset B of the class (22 of 40 right) comes out as published figures say', async () => {
		// Wilson 95 % for 22/40 = .398 to .693: E. B. Wilson 1927, computed from the formula
		const { one } = await reportOf({ a: 9, b: 22, c: 8, d: 1 });
		expect(one.answers).toBe(40);
		expect(one.p).toBeCloseTo(0.55, 10);
		expect(one.interval!.low).toBeCloseTo(0.398, 3);
		expect(one.interval!.high).toBeCloseTo(0.693, 3);
		// d was chosen once: hidden, and with it the next smallest, or the total would tell
		expect(one.options.map(({ count }) => count)).toEqual([9, 22, null, null]);
	});

	it('no count from 1 to 4 can be worked out from what is shown', async () => {
		const cases = [
			{ a: 9, b: 22, c: 8, d: 1 },
			{ b: 18, a: 2 },
			{ b: 3, a: 20 },
			{ b: 4, a: 9, c: 7 },
			{ b: 20, a: 3, c: 2 },
			{ b: 1 },
			{ b: 12, a: 4, c: 4 },
		];
		for (const counts of cases) {
			const { one } = await reportOf(counts as Record<string, number>);
			for (const count of given(one))
				expect(count === 0 || count >= 5, JSON.stringify([counts, one])).toBe(true);
			for (const { count, share } of one.options) if (count === null) expect(share).toBeNull();
		}
	});

	it('a share right that would give a hidden count back is not told', async () => {
		expect((await reportOf({ b: 18, a: 2 })).one).toMatchObject({ p: null, interval: null });
		expect((await reportOf({ b: 3, a: 20 })).one).toMatchObject({ p: null, interval: null });
	});

	it('few hints are hidden, none and many are told', async () => {
		expect((await reportOf({ b: 20, a: 10 }, 3)).one.hinted).toBeNull();
		expect((await reportOf({ b: 20, a: 10 })).one.hinted).toBe(0);
		expect((await reportOf({ b: 20, a: 10 }, 12)).one.hinted).toBe(12);
	});

	it('under ten answers: too few, and no figure', async () => {
		const { one, from, to } = await reportOf({ b: 5, a: 4 });
		expect(one.advice).toEqual(['too-few']);
		expect([one.p, one.d, one.r]).toEqual([null, null, null]);
		expect([from, to]).toEqual(['2026-11-25', '2026-11-25']);
	});

	it('rounds played by ten teams to the end have their KR-20, others none', async () => {
		// dataset A: 10 pupils, 5 items; KR-20 .5435 with the population variance, worked out by hand from its formula
		const rows = '11111 11110 11101 11100 11010 10100 11000 10000 01000 00001'.split(' ');
		const store = sqliteCounts(path.join(folder, 'kr20.db'));
		for (const [i, row] of rows.entries()) {
			const total = [...row].filter((mark) => mark === '1').length;
			const takers = [...row].map((mark, item) => ({
				kind: 'quiz-taker' as const,
				facts: {
					question: `choose-${item}`,
					option: mark === '1' ? 'right' : 'wrong',
					right: mark === '1',
					total,
					of: 5,
					round: '547123',
				},
			}));
			const round = { kind: 'quiz-round' as const, facts: { round: '547123', total, of: 5 } };
			await store.add(`batch-${i}`, '2026-11-25', [...takers, round]);
		}
		const lone = { kind: 'quiz-round' as const, facts: { round: '547131', total: 3, of: 5 } };
		await store.add('lone', '2026-11-25', [lone]);
		const { rounds } = await quizReport(store);
		await store.close();
		expect(rounds.map(({ round, takers }) => [round, takers])).toEqual([
			['547123', 10],
			['547131', null],
		]);
		expect(rounds[0].reliability).toBeCloseTo(0.5435, 4);
		expect(rounds[1].reliability).toBeNull();
	});
});
