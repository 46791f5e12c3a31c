import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayOf, firstKeptDay } from '../../../src/lib/server/counts/days';
import { factsKey, readFactsKey } from '../../../src/lib/server/counts/countsStore';
import { FEWEST_SHOWN, hideSmall } from '../../../src/lib/server/counts/hideSmall';

describe('hideSmall', () => {
	it('hides 1 to 4, shows 0 and 5', () => {
		expect(hideSmall([0, 5, 4, 1, 80])).toEqual([0, 5, null, null, 80]);
	});

	it('never lets a total give one away', () => {
		expect(hideSmall([3, 20, 9])).toEqual([null, 20, null]);
		expect(hideSmall([3])).toEqual([null]);
		fc.assert(
			fc.property(fc.array(fc.nat(30), { minLength: 2, maxLength: 6 }), (counts) => {
				const shown = hideSmall(counts);
				shown.forEach((one, i) => expect(one === null || one === counts[i]).toBe(true));
				for (let i = 0; i < counts.length; i += 1)
					if (counts[i] > 0 && counts[i] < FEWEST_SHOWN) expect(shown[i]).toBeNull();
				const hidden = shown.filter((one) => one === null).length;
				const others = counts.filter((one) => one > 0).length > 1;
				if (hidden > 0 && others) expect(hidden).toBeGreaterThan(1);
			}),
		);
	});
});

describe('days', () => {
	it('today counts as one of those kept, over months, years and leap days', () => {
		expect(dayOf(new Date(2026, 10, 5, 23, 59))).toBe('2026-11-05');
		expect(firstKeptDay(new Date(2026, 0, 1, 0, 5), 1)).toBe('2026-01-01');
		expect(firstKeptDay(new Date(2026, 0, 1, 0, 5), 2)).toBe('2025-12-31');
		expect(firstKeptDay(new Date(2028, 2, 1, 12), 2)).toBe('2028-02-29');
	});
});

describe('factsKey', () => {
	it('is one for equal facts and can be read back', () => {
		expect(factsKey({ b: 1, a: 'x' })).toBe(factsKey({ a: 'x', b: 1 }));
		expect(readFactsKey(factsKey({ b: 1, a: 'x', c: false }))).toEqual({ a: 'x', b: 1, c: false });
		expect(factsKey({ a: 1 })).not.toBe(factsKey({ a: '1' }));
	});
});
