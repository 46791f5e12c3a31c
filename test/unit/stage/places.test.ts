import fc from 'fast-check';
import { expect, test } from 'vitest';
import { places } from '../../../src/lib/stage/places';

test('copies share a number, others do not; -0 is 0', () => {
	const { of, count } = places([1, 2, 3, 0, 0, 0, 1, 2, 3, -0, 0, -0, 3, 2, 1]);
	expect([...of]).toEqual([0, 1, 0, 1, 2]);
	expect(count).toBe(3);
});

test('agrees with comparing every pair', () => {
	const point = fc.tuple(
		fc.integer({ min: 0, max: 3 }),
		fc.integer({ min: 0, max: 3 }),
		fc.integer({ min: 0, max: 3 }),
	);
	fc.assert(
		fc.property(fc.array(point, { maxLength: 60 }), (points) => {
			const { of, count } = places(points.flat());
			const names = points.map(String);
			expect(count).toBe(new Set(names).size);
			for (let i = 0; i < points.length; i++)
				for (let j = 0; j < i; j++) expect(of[i] === of[j]).toBe(names[i] === names[j]);
		}),
	);
});

test('nothing has no places', () => {
	expect(places([]).count).toBe(0);
});
