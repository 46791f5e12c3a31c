import { describe, expect, it } from 'vitest';
import { clipLoop } from '../../../src/lib/domain/mesh/clipLoop';
import { polygonArea } from '../../../src/lib/domain/mesh/polygonArea';

describe('clipLoop', () => {
	it('keeps the part above', () => {
		const triangle = [-3, -1, 3, -1, 0, 2];
		const kept = clipLoop(triangle, 0);
		// a triangle 2 high and 4 wide is left
		expect(Math.abs(polygonArea(Float64Array.from(kept)))).toBeCloseTo(4, 9);
		expect(Math.min(...kept.filter((_, i) => i % 2))).toBe(0);
	});

	it('leaves what lies wholly above as it is, and nothing of what lies below', () => {
		const triangle = [0, 1, 4, 1, 2, 5];
		expect(clipLoop(triangle, 0)).toEqual(triangle);
		expect(clipLoop(triangle, 6)).toEqual([]);
	});
});
