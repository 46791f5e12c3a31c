import { describe, expect, it } from 'vitest';
import { bounds } from '../../../src/lib/domain/mesh/bounds';
import { box, placed } from './shapes';

describe('bounds', () => {
	it('is the box of a box', () => {
		const b = bounds(placed(box(2, 3, 6), [0, 0, 0], 1, [10, -20, 30]));
		expect(b.min).toEqual([10, -20, 30]);
		expect(b.max).toEqual([12, -17, 36]);
		expect(b.diagonal).toBeCloseTo(7, 12); // 2, 3, 6, 7
	});

	it('is nothing at the origin for no vertices', () => {
		expect(bounds({ positions: new Float32Array(0) })).toEqual({
			min: [0, 0, 0],
			max: [0, 0, 0],
			diagonal: 0,
		});
	});
});
