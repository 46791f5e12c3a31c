import { describe, expect, it } from 'vitest';
import { tryLimit } from '../../../../src/lib/server/staff/tryLimit';

const EACH = { free: 5, first_ms: 5_000, most_ms: 900_000 };
const ALL = { free: 50, first_ms: 1_000, most_ms: 30_000 };

function limit(each = EACH, all = ALL) {
	let now_ms = 0;
	const tries = tryLimit(each, all, () => now_ms);
	return { tries, pass: (ms: number) => (now_ms += ms) };
}

describe('tryLimit', () => {
	it('lets a few wrong tries pass, then makes each wait twice as long, up to a most', () => {
		const { tries, pass } = limit();
		for (let i = 0; i < 5; i += 1) expect(tries.take('a')).toBe(0);
		const waits: number[] = [];
		for (let i = 0; i < 10; i += 1) {
			const wait = tries.take('a');
			waits.push(wait);
			pass(wait);
			expect(tries.take('a')).toBe(0);
		}
		expect(waits.slice(0, 4)).toEqual([5_000, 10_000, 20_000, 40_000]);
		expect(waits.at(-1)).toBe(900_000);
	});

	it('counts a try before it is looked at: many at the same time are no way round', () => {
		const { tries } = limit();
		expect(Array.from({ length: 100 }, () => tries.take('a')).filter((wait) => wait === 0)).toHaveLength(5);
	});

	it('counts nothing while waiting: knocking does not make it longer', () => {
		const { tries, pass } = limit();
		for (let i = 0; i < 5; i += 1) tries.take('a');
		for (let i = 0; i < 50; i += 1) tries.take('a');
		expect(tries.wait('a')).toBe(5_000);
		pass(5_000);
		expect(tries.take('a')).toBe(0);
	});

	it('keeps askers apart, and begins anew with the right one', () => {
		const { tries } = limit();
		for (let i = 0; i < 5; i += 1) tries.take('a');
		expect(tries.wait('b')).toBe(0);
		for (let i = 0; i < 4; i += 1) tries.take('b');
		tries.good('b');
		for (let i = 0; i < 5; i += 1) expect(tries.take('b')).toBe(0);
	});

	it('slows down many addresses together, but never keeps staff out for more than half a minute', () => {
		const { tries, pass } = limit();
		for (let i = 0; i < 50; i += 1) tries.take(`robot ${i}`);
		expect(tries.wait('staff')).toBe(1_000);
		for (let i = 0; i < 500; i += 1) {
			pass(tries.wait(`other ${i}`));
			tries.take(`other ${i}`);
		}
		expect(tries.wait('staff')).toBe(30_000);
	});

	it('makes a PIN wait for a quarter of an hour after five', () => {
		const PIN = { free: 5, first_ms: 900_000, most_ms: 900_000 };
		const { tries, pass } = limit(PIN, { ...PIN, free: 25 });
		for (let i = 0; i < 5; i += 1) expect(tries.take('screen')).toBe(0);
		expect(tries.take('screen')).toBe(900_000);
		pass(899_999);
		expect(tries.take('screen')).toBe(1);
		pass(1);
		expect(tries.take('screen')).toBe(0);
		expect(tries.take('screen')).toBe(900_000);
	});

	it('forgets after a quiet hour', () => {
		const { tries, pass } = limit();
		for (let i = 0; i < 5; i += 1) tries.take('a');
		pass(3_610_000);
		for (let i = 0; i < 5; i += 1) expect(tries.take('a')).toBe(0);
	});
});
