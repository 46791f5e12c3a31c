import { describe, expect, it } from 'vitest';
import { centreline } from '../../../src/lib/domain/tooth/centreline';
import { vec3, type Vec3 } from '../../../src/lib/domain/vec3';

const deg = (cosine: number): number => (Math.acos(Math.min(1, cosine)) * 180) / Math.PI;

describe('centreline', () => {
	it('is the y axis without turning', () => {
		const line = centreline({ distal_deg: 0, lingual_deg: 0, startsAt: 0 }, 30);
		expect(line.at(12).centre).toEqual([0, 12, 0]);
		expect(line.at(-4).centre).toEqual([0, -4, 0]);
		expect(line.heightToArc(12)).toBeCloseTo(12, 9);
	});

	it('turns by the whole angle, distally and lingually, and not before its start', () => {
		const line = centreline({ distal_deg: 30, lingual_deg: 40, startsAt: 0.25 }, 40);
		expect(line.at(9.9).along[1]).toBe(1);
		const { along, centre } = line.at(40);
		expect(deg(along[1])).toBeCloseTo(50, 6);
		expect(along[0] / along[2]).toBeCloseTo(-30 / 40, 6);
		expect(centre[0]).toBeGreaterThan(0);
		expect(centre[2]).toBeLessThan(0);
	});

	it('keeps right-handed unit frames and steps as long as its arc', () => {
		const line = centreline({ distal_deg: 55, lingual_deg: -20, startsAt: 0.1 }, 25);
		let length = 0;
		let before: Vec3 = line.at(0).centre;
		for (let s = 0.05; s <= 25.001; s += 0.05) {
			const { centre, distal, labial, along } = line.at(Math.min(25, s));
			length += vec3.distance(before, centre);
			before = centre;
			expect(vec3.norm(distal)).toBeCloseTo(1, 9);
			expect(vec3.dot(distal, along)).toBeCloseTo(0, 9);
			// x cross y = z in the tooth frame: distal cross along = labial
			const cross = vec3.cross(distal, along);
			for (const k of [0, 1, 2]) expect(cross[k]).toBeCloseTo(labial[k], 9);
		}
		expect(length).toBeCloseTo(25, 2);
	});

	it('finds the arc length of a height', () => {
		const line = centreline({ distal_deg: 60, lingual_deg: 0, startsAt: 0 }, 40);
		for (const s of [3, 14.2, 33]) expect(line.heightToArc(line.at(s).centre[1])).toBeCloseTo(s, 6);
	});
});
