import { expect, it } from 'vitest';
import { atPlaces } from '../../../src/lib/domain/compare/atPlaces';

it('moves what names a tooth to its place, and nothing else', () => {
	const message = {
		key: 'differ_size',
		values: { a: 1, b: 2, one: 1, two: 2, more: 2, less: 1, times: 2, has: 1, lacks: 2 },
	};
	expect(atPlaces(message, [2, 4])).toEqual({
		key: 'differ_size',
		values: { a: 1, b: 2, one: 2, two: 4, more: 4, less: 2, times: 2, has: 2, lacks: 4 },
	});
	expect(atPlaces(message, [1, 2])).toEqual(message);
});
