import { describe, expect, it } from 'vitest';
import { polygonMoments } from '../../../src/lib/domain/mesh/polygonMoments';

describe('polygonMoments', () => {
	it('of a rectangle: a^2/12 and b^2/12 about its middle', () => {
		const m = polygonMoments(Float64Array.of(10, 10, 16, 10, 16, 14, 10, 14));
		expect(m.area).toBe(24);
		expect(m.centroid).toEqual([13, 12]);
		expect(m.xx).toBeCloseTo(3, 12);
		expect(m.yy).toBeCloseTo(16 / 12, 12);
		expect(m.xy).toBeCloseTo(0, 12);
	});

	it('of a right triangle: b^2/18, h^2/18 and -bh/36, in either direction', () => {
		for (const points of [
			[0, 0, 6, 0, 0, 3],
			[0, 3, 6, 0, 0, 0],
		]) {
			const m = polygonMoments(Float64Array.from(points));
			expect(m.area).toBe(9);
			expect(m.centroid[0]).toBeCloseTo(2, 12);
			expect(m.centroid[1]).toBeCloseTo(1, 12);
			expect(m.xx).toBeCloseTo(2, 12);
			expect(m.yy).toBeCloseTo(0.5, 12);
			expect(m.xy).toBeCloseTo(-0.5, 12);
		}
	});

	it('of a line has no area', () => {
		expect(polygonMoments(Float64Array.of(1, 1, 2, 2)).area).toBe(0);
	});
});
