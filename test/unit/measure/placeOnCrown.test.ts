import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CrownMarks } from '../../../src/lib/domain/measure/crownMeasures';
import { markedFrame } from '../../../src/lib/domain/measure/markedFrame';
import { measureCrown } from '../../../src/lib/domain/measure/measureCrown';
import { crownDirection, placeOnCrown } from '../../../src/lib/domain/measure/placeOnCrown';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import { vec3, type Vec3 } from '../../../src/lib/domain/vec3';

const marks: CrownMarks = { apex: [3, 20, 1], baseMesial: [-5, 0, 0], baseDistal: [5, 0, 0] };
const labialUp: CrownMarks = { ...marks, labial: [0, 0.2, 1] };

describe('markedFrame', () => {
	it('takes the base square to the apex, or through the labial direction', () => {
		const plain = markedFrame(marks)!;
		// the apex stands over the line of the base points at hypot(20, 1)
		expect(plain.axialHeight_mm).toBeCloseTo(Math.hypot(20, 1), 12);
		expect(plain.frame.u).toEqual([1, 0, 0]);
		const tilted = markedFrame(labialUp)!;
		const normal = vec3.normalise(vec3.cross([0, 0.2, 1], [1, 0, 0]));
		expect(vec3.distance(tilted.frame.normal, normal)).toBeLessThan(1e-12);
		expect(tilted.axialHeight_mm).toBeCloseTo(vec3.dot([3, 20, 1], normal), 12);
	});

	it('agrees with the measured height of a sculpted tooth that leans inwards', () => {
		const sculpted = sculpt({
			crownHeight_mm: 30,
			baseLength_mm: 16,
			baseWidth_mm: 10,
			sections: [{ at: 0, shape: 'oval' }],
			taper: 'cone',
			curve: { distal_deg: 12, lingual_deg: 8, startsAt: 0.2 },
			tipRadius_mm: 0.8,
			carinae: [],
			root: { state: 'full', length_mm: 20, swelling: 1.1, folded: false },
		});
		if (!sculpted.ok) throw new Error(JSON.stringify(sculpted.problem));
		const { mesh, marks: own } = sculpted.value;
		for (const given of [own, { ...own, labial: undefined }]) {
			const measured = measureCrown(mesh, { marks: given });
			if (!measured.ok) throw new Error(measured.problem.message);
			expect(markedFrame(given)!.axialHeight_mm).toBeCloseTo(measured.value.axialHeight_mm, 9);
		}
	});

	it('gives nothing for marks that span no crown', () => {
		expect(markedFrame({ ...marks, baseDistal: marks.baseMesial })).toBeNull();
		expect(markedFrame({ ...marks, apex: [2, 0, 0] })).toBeNull();
	});
});

describe('placeOnCrown', () => {
	const upright = markedFrame({ ...marks, apex: [0, 20, 0] })!;
	it('counts from distal by labial, mesial and lingual, and in heights of the crown', () => {
		const at = (point: Vec3) => placeOnCrown(upright, point, [0, point[1], 0]);
		expect(at([4, 10, 0])).toEqual({ at: 0.5, where_deg: 0 });
		expect(at([0, 5, 3]).where_deg).toBeCloseTo(90, 9);
		expect(at([-4, 5, 0]).where_deg).toBeCloseTo(180, 9);
		expect(at([0, -10, -3])).toEqual({ at: -0.5, where_deg: 270 });
	});
	it('has labial at 90 on a tooth of the other side too', () => {
		const other = markedFrame({ ...marks, apex: [0, 20, 0], labial: [0, 0, -1] })!;
		expect(other.labial).toBe('-z');
		expect(placeOnCrown(other, [0, 5, -3], [0, 5, 0]).where_deg).toBeCloseTo(90, 9);
		expect(placeOnCrown(other, [4, 5, 0], [0, 5, 0]).where_deg).toBeCloseTo(0, 9);
	});
	it('is undone by crownDirection', () => {
		fc.assert(
			fc.property(
				fc.double({ min: 0, max: 359.99, noNaN: true }),
				fc.constantFrom(labialUp, marks, { ...marks, labial: [0, 0.1, -1] as Vec3 }),
				(where_deg, given) => {
					const crown = markedFrame(given)!;
					const middle = vec3.add(crown.frame.origin, vec3.scale(crown.frame.normal, 7));
					const point = vec3.add(middle, vec3.scale(crownDirection(crown, where_deg), 3));
					const place = placeOnCrown(crown, point, middle);
					expect(Math.abs(((place.where_deg - where_deg + 540) % 360) - 180)).toBeLessThan(1e-6);
					expect(place.at).toBeCloseTo(7 / crown.axialHeight_mm, 9);
				},
			),
		);
	});
});
