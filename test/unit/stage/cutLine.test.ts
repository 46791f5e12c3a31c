import { describe, expect, it } from 'vitest';
import { CENTRE_POINTS } from '../../../src/lib/stage/centreLine';
import { cutLine } from '../../../src/lib/stage/tools/cutLine';

/** x = y / 2, radius shrinking from 5 to 0 over 0 .. 10 mm. */
const heights = Array.from({ length: CENTRE_POINTS }, (_, i) => i * 2);
const line = {
	points: Float32Array.from(heights.flatMap((y) => [y / 2, y, 0, 5 - y / 2])),
};

describe('cutLine', () => {
	it('ends the line where it meets the cut', () => {
		const { points: cut } = cutLine(line, 5);
		for (let i = 0; i < CENTRE_POINTS; i++) {
			const y = Math.min(i * 2, 5);
			expect([...cut.subarray(i * 4, i * 4 + 4)]).toEqual([y / 2, y, 0, 5 - y / 2]);
		}
	});

	it('leaves a line below the cut as it is, and does not change what it was given', () => {
		const before = line.points.slice();
		expect(cutLine(line, 11).points).toEqual(line.points);
		cutLine(line, 3);
		expect(line.points).toEqual(before);
	});

	it('lays a line that lies wholly above onto the cut', () => {
		const { points: cut } = cutLine(line, -1);
		for (let i = 0; i < CENTRE_POINTS; i++) expect(cut[i * 4 + 1]).toBe(-1);
	});
});
