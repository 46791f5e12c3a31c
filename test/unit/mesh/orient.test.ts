import { describe, expect, it } from 'vitest';
import { orient } from '../../../src/lib/domain/mesh/orient';
import { volume } from '../../../src/lib/domain/mesh/volume';
import { box, rotation } from './shapes';

describe('orient', () => {
	it('turns and moves', () => {
		const quarter = orient(box(1, 2, 3), [[0, -1, 0], [1, 0, 0], [0, 0, 1]], [10, 0, 0]); // prettier-ignore
		expect([...quarter.positions.slice(6, 9)]).toEqual([8, 1, 0]); // corner (1, 2, 0)
	});

	it('keeps volume and its sign under a rotation', () => {
		expect(volume(orient(box(1, 2, 3), rotation(1, 2, 3), [4, 5, 6]))).toBeCloseTo(6, 5);
	});

	it('still faces outwards when mirrored', () => {
		expect(volume(orient(box(1, 2, 3), [[-1, 0, 0], [0, 1, 0], [0, 0, 1]]))).toBeCloseTo(6, 10); // prettier-ignore
	});
});
