import { describe, expect, it } from 'vitest';
import { indenterTop } from '../../../src/lib/domain/feeding/contactArea';
import { coneBeam } from '../../../src/lib/domain/feeding/crownBeam';
import { bite } from '../../../src/lib/domain/feeding/bite';
import type { Biter } from '../../../src/lib/domain/feeding/biter';
import { scaledBiter, zoneOf } from '../../../src/lib/kiosk/feeding/feedingTable.svelte';

const place = (pierce: number, cut: number, crush: number) => ({ pierce, cut, crush });

describe('zoneOf', () => {
	it('tells corners, sides and the middle', () => {
		expect(zoneOf(place(1, 0, 0))).toBe('pierce');
		expect(zoneOf(place(0.2, 0.65, 0.15))).toBe('cut');
		expect(zoneOf(place(0, 0.1, 0.9))).toBe('crush');
		expect(zoneOf(place(0.5, 0.5, 0))).toBe('pierce-cut');
		expect(zoneOf(place(0, 0.5, 0.5))).toBe('cut-crush');
		expect(zoneOf(place(0.5, 0, 0.5))).toBe('pierce-crush');
		expect(zoneOf(place(1 / 3, 1 / 3, 1 / 3))).toBe('middle');
	});
});

describe('scaledBiter', () => {
	const biter: Biter = {
		crownHeight_mm: 30,
		indenter: indenterTop({ tipRadius_mm: 1, height_mm: 30, baseLength_mm: 15, baseWidth_mm: 12, edges: 0 }),
		beam: coneBeam(2, 15, 30, 0.8),
		face: { radius_mm: 1, halfWidth_mm: 6.7 },
		weakPlane: 'LL',
		notes: [],
	};
	const flesh = (k: number) => ({
		layers: [
			{
				thickness_mm: 12 * k,
				material: {
					id: 'flesh',
					resists_MPa: 0.5,
					basis: 'strength' as const,
					gives: 'parts' as const,
					edges: 'no-difference' as const,
					recalled: false,
					standIn: false,
				},
			},
		],
	});
	const options = {
		crown: { strength_MPa: 338, enamel: { E_GPa: 80, nu: 0.3 }, recalled: false },
		edgedShare: 0.7,
		sidePull_deg: 30,
	};

	// dimensional analysis: at equal pressures every force goes with the square of the size
	it('needs and stands the square of its size in force, with the same stress, in prey of its own size', () => {
		const one = bite(biter, flesh(1), options);
		for (const k of [0.4, 2, 2.5]) {
			const other = bite(scaledBiter(biter, k), flesh(k), options);
			expect(other.needed_N / one.needed_N).toBeCloseTo(k * k, 6);
			expect(other.breaking.force_N / one.breaking.force_N).toBeCloseTo(k * k, 3);
			expect(other.safety / one.safety).toBeCloseTo(1, 3);
			expect(other.stress.peak.tension_MPa / one.stress.peak.tension_MPa).toBeCloseTo(1, 3);
		}
	});
});
