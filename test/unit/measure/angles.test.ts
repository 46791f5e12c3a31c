import { describe, expect, it } from 'vitest';
import { apexAngle, crownAngle, distalAngle } from '../../../src/lib/domain/measure/angles';

describe('angles of the crown’s triangle', () => {
	it('are those of a 3-4-5 triangle', () => {
		// base 3, mesial side 5, distal side 4: right angle at the distal point
		expect(distalAngle(3, 5, 4)).toBeCloseTo(90, 12);
		expect(crownAngle(3, 5, 4)).toBeCloseTo((Math.acos(3 / 5) * 180) / Math.PI, 12);
		expect(apexAngle(3, 5, 4)).toBeCloseTo((Math.acos(4 / 5) * 180) / Math.PI, 12);
	});

	it('are 60 degrees each when all sides are alike, in any unit', () => {
		for (const side of [1e-3, 1, 1e6]) {
			for (const angle of [crownAngle, apexAngle, distalAngle])
				expect(angle(side, side, side)).toBeCloseTo(60, 9);
		}
	});

	it('are not a number when the lengths make no triangle, and 0 or 180 when they make a flat one', () => {
		expect(crownAngle(1, 1, 5)).toBeNaN();
		expect(crownAngle(0.1, 0.3, 0.2)).toBeCloseTo(0, 4);
		expect(crownAngle(0.1, 0.2, 0.3)).toBeCloseTo(180, 4);
	});
});
