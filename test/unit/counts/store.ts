import { expect, it } from 'vitest';
import type { CountsStore } from '../../../src/lib/server/counts/countsStore';

/** What every kind of counts store has to hold; the same tests for each. */
export function storeTests(open: () => Promise<CountsStore>): void {
	const answer = (option: string) => ({
		kind: 'quiz-answer' as const,
		facts: { question: 'q', option, right: true },
	});

	it('counts by day and facts, whatever the order of the facts', async () => {
		const store = await open();
		await store.add('b1', '2026-11-25', [answer('a'), answer('a'), answer('b')]);
		await store.add('b2', '2026-11-25', [
			{ kind: 'quiz-answer', facts: { right: true, option: 'a', question: 'q' } },
		]);
		await store.add('b3', '2026-11-26', [answer('a')]);
		expect(await store.tallies('quiz-answer')).toEqual([
			{
				kind: 'quiz-answer',
				day: '2026-11-25',
				facts: { question: 'q', option: 'a', right: true },
				count: 3,
			},
			{
				kind: 'quiz-answer',
				day: '2026-11-25',
				facts: { question: 'q', option: 'b', right: true },
				count: 1,
			},
			{
				kind: 'quiz-answer',
				day: '2026-11-26',
				facts: { question: 'q', option: 'a', right: true },
				count: 1,
			},
		]);
		expect(await store.tallies('quiz-answer', '2026-11-26')).toHaveLength(1);
		expect(await store.tallies('quiz-round')).toEqual([]);
		await store.close();
	});

	it('counts a batch once, however often it is sent', async () => {
		const store = await open();
		expect(await store.add('same', '2026-11-25', [answer('a')])).toBe(true);
		expect(await store.add('same', '2026-11-25', [answer('a')])).toBe(false);
		expect((await store.tallies('quiz-answer'))[0].count).toBe(1);
		await store.close();
	});

	it('keeps none of a batch that fails', async () => {
		const store = await open();
		const bad = { kind: null as unknown as 'quiz-answer', facts: {} };
		await expect(store.add('half', '2026-11-25', [answer('a'), bad])).rejects.toThrow();
		expect(await store.tallies('quiz-answer')).toEqual([]);
		expect(await store.add('half', '2026-11-25', [answer('a')])).toBe(true);
		await store.close();
	});

	it('forgets old days', async () => {
		const store = await open();
		await store.add('old', '2026-01-01', [answer('a')]);
		await store.add('new', '2026-11-25', [answer('a')]);
		expect(await store.forgetBefore('2026-06-01')).toBe(1);
		expect((await store.tallies('quiz-answer')).map(({ day }) => day)).toEqual(['2026-11-25']);
		await store.close();
	});
}
