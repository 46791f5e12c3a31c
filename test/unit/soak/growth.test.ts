import { expect, it } from 'vitest';
import { growth } from '../../soak/growth';

const samples = (values: number[]) => values.map((value, i) => ({ at_h: i, value }));

it('compares the first and the last quarter after the warm-up', () => {
	// two hours of warm-up, then 100, 100 ... 110, 110
	const {
		first,
		last,
		share,
		samples: count,
	} = growth(samples([10, 50, 100, 100, 103, 105, 105, 106, 110, 110]), 2);
	expect([first, last, count]).toEqual([100, 110, 8]);
	expect(share).toBeCloseTo(0.1, 12);
});
it('one visitor who leaves much behind for the next is no growth', () => {
	expect(growth(samples([1, 1, 1, 900, 1, 1, 1, 1, 1, 1, 1, 1]), 0).share).toBe(0);
});
it('a steady leak shows, however small beside what is held', () => {
	const leak = samples(Array.from({ length: 100 }, (_, i) => 1000 + i));
	expect(growth(leak, 0).share).toBeCloseTo(75 / 1012, 3);
});
it('what shrinks is no growth; nothing is none; something out of nothing is', () => {
	expect(growth(samples([9, 9, 9, 9, 3, 3, 3, 3]), 0).share).toBeLessThan(0);
	expect(growth(samples([0, 0, 0, 0, 0, 0, 0, 0]), 0).share).toBe(0);
	expect(growth(samples([0, 0, 0, 0, 1, 1, 1, 1]), 0).share).toBe(Infinity);
});
it('too few samples are told, not guessed from', () => {
	expect(() => growth(samples([1, 2, 3]), 0)).toThrow('growth: 3 samples after the warm-up');
});
