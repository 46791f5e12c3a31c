import { describe, expect, test } from 'vitest';
import { createPool } from '../../../src/lib/stage/pool';

const counted = (keep: number) => {
	const loads: string[] = [];
	const parked: string[] = [];
	const pool = createPool<{ key: string }>({
		load: async (key) => {
			loads.push(key);
			if (key.startsWith('bad')) throw new Error(`no ${key}`);
			return { key };
		},
		park: ({ key }) => parked.push(key),
		keep,
	});
	return { pool, loads, parked };
};

describe('a counted pool', () => {
	test('loads once for many users, also when they ask at the same time', async () => {
		const { pool, loads } = counted(2);
		const loans = await Promise.all([pool.borrow('a'), pool.borrow('a'), pool.borrow('a')]);
		expect(loads).toEqual(['a']);
		expect(new Set(loans.map((l) => l.resource)).size).toBe(1);
		expect(pool.used).toBe(1);
	});

	test('frees at the last release only, and once however often it is called', async () => {
		const { pool, parked } = counted(2);
		const [one, two] = [await pool.borrow('a'), await pool.borrow('a')];
		one.release();
		one.release();
		expect(parked).toEqual([]);
		two.release();
		expect(parked).toEqual(['a']);
		expect(pool.used).toBe(0);
	});

	test('keeps the last few unused, oldest goes first; those in use never go', async () => {
		const { pool, loads } = counted(2);
		const held = await pool.borrow('held');
		for (const key of ['a', 'b', 'c']) (await pool.borrow(key)).release();
		expect(pool.held).toBe(3);
		await pool.preload('c');
		await pool.preload('b');
		expect(loads).toEqual(['held', 'a', 'b', 'c']);
		await pool.preload('a');
		expect(loads).toEqual(['held', 'a', 'b', 'c', 'a']);
		expect((await pool.borrow('held')).resource).toBe(held.resource);
	});

	test('300 swaps hold no more than what is used and kept', async () => {
		const { pool, parked } = counted(3);
		let loan = await pool.borrow('shape-0');
		for (let i = 1; i <= 300; i++) {
			const next = await pool.borrow(`shape-${i % 20}`);
			loan.release();
			loan = next;
			expect(pool.held).toBeLessThanOrEqual(4);
			expect(pool.used).toBe(1);
		}
		expect(parked).toHaveLength(300);
	});

	test('a failed load is told to each asker and tried again at the next ask', async () => {
		const { pool, loads } = counted(2);
		await expect(pool.borrow('bad')).rejects.toThrow('no bad');
		await expect(pool.preload('bad')).rejects.toThrow('no bad');
		expect(loads).toEqual(['bad', 'bad']);
		expect(pool.held).toBe(0);
		expect(pool.used).toBe(0);
	});

	test('a preloaded shape has no user; clearing parks everything', async () => {
		const { pool, parked } = counted(4);
		await pool.preload('a');
		await pool.borrow('b');
		expect(pool.used).toBe(1);
		pool.clear();
		expect(parked.sort()).toEqual(['a', 'b']);
		expect(pool.held).toBe(0);
	});
});
