import { describe, expect, it } from 'vitest';
import { telling } from '../../../src/lib/domain/compare/telling';
import { TRAIT_IDS, TRAITS } from '../../../src/lib/domain/compare/traits';
import { edgesAt, sampleTooth } from './sampleTooth';

/** Teeth of one group whose slenderness is e to the power of each number. */
const slender = (group: string, ...powers: number[]) =>
	powers.map((power) => sampleTooth({ group, measures: { crownHeightRatio: Math.exp(power) } }));

describe('telling', () => {
	it('takes the share of variance between groups, on the logarithm, and draws it towards the prior', () => {
		const { of } = telling([...slender('a', 0, 0.2), ...slender('b', 1, 1.2), ...slender('c', 2, 2.2)]);
		// mean 1.1; total 1.21+0.81+0.01+0.01+0.81+1.21 = 4.06; within 3 * 0.02 = 0.06
		// n = 6, k = 3: 1 - (0.06/3) / (4.06/5) = 1 - 0.02/0.812 = 0.975369
		expect(of.slenderness.separation).toBeCloseTo(0.975369, 6);
		// prior 0.75 worth 8 teeth, d = 6 - 3: (8 * 0.75 + 3 * 0.975369) / 11 = 8.926108 / 11
		expect(of.slenderness.weight).toBeCloseTo(0.811464, 6);
		// sqrt(4.06 / 5)
		expect(of.slenderness.spread).toBeCloseTo(0.90111, 5);
	});

	it('counts categories on the same scale', () => {
		const teeth = [
			...[2, 2, 2].map((_, i) =>
				sampleTooth({ group: 'a', measures: { ...edgesAt(0, 180), crownHeight_mm: 20 + i } }),
			),
			...[2, 2].map((_, i) =>
				sampleTooth({ group: 'b', measures: { ...edgesAt(), crownHeight_mm: 20 + i } }),
			),
			sampleTooth({ group: 'c', measures: edgesAt(0, 180, 270) }),
		];
		// each group of one kind: nothing varies within, so 1; d = 6 - 3; (8 * 0.9 + 3) / 11
		expect(telling(teeth).of.carinae.separation).toBe(1);
		expect(telling(teeth).of.carinae.weight).toBeCloseTo(10.2 / 11, 12);
		expect(telling(teeth).of.carinae.spread).toBe(1);
		// b with one edged tooth: 2,2,2 | 0,2 | 3: n - sum/n = 6 - (16+1+1)/6 = 3; within b 2 - (1+1)/2 = 1
		// 1 - (1/3) / (3/5) = 4/9; (8 * 0.9 + 3 * 4/9) / 11
		const mixed = [...teeth.slice(0, 4), sampleTooth({ group: 'b', measures: edgesAt(0, 180) }), teeth[5]];
		expect(telling(mixed).of.carinae.separation).toBeCloseTo(4 / 9, 12);
		expect(telling(mixed).of.carinae.weight).toBeCloseTo((7.2 + 4 / 3) / 11, 12);
	});

	it('thinks little of a trait that varies as much within groups as between them', () => {
		const { of } = telling([...slender('a', 0, 2), ...slender('b', 0.1, 2.1), ...slender('c', 0.2, 2.2)]);
		expect(of.slenderness.separation).toBe(0);
		expect(of.slenderness.weight).toBeCloseTo((8 * 0.75) / 11, 12);
	});

	it('falls back to the prior and the stated spread with fewer than three groups', () => {
		for (const teeth of [[], slender('a', 0), [...slender('a', 0), ...slender('b', 3)]]) {
			const { of } = telling(teeth);
			for (const id of TRAIT_IDS) {
				const kind = TRAITS[id];
				expect(of[id]).toEqual({
					separation: null,
					weight: kind.prior,
					spread: kind.kind === 'number' ? kind.spread : 1,
				});
			}
		}
		const two = telling([...slender('a', 0, 0.1, 0.2), ...slender('b', 3, 3.1)]);
		expect(two.of.slenderness).toMatchObject({ separation: null, weight: 0.75 });
	});

	it('falls back to the prior where all values are equal, or each group has one tooth', () => {
		const alike = telling([...slender('a', 0, 0.5), ...slender('b', 1, 1.5), ...slender('c', 2, 2.5)]);
		expect(alike.of.roundness).toEqual({ separation: null, weight: 0.6, spread: 0.25 });
		const single = telling([...slender('a', 0), ...slender('b', 1), ...slender('c', 2), ...slender('d', 3)]);
		expect(single.of.slenderness).toMatchObject({ separation: null, weight: 0.75 });
		// the spread is known all the same: 0, 1, 2, 3 have the variance 5/3
		expect(single.of.slenderness.spread).toBeCloseTo(Math.sqrt(5 / 3), 12);
	});

	it('counts a tooth in two records once, and is the same in any order', () => {
		const teeth = [...slender('a', 0, 0.3), ...slender('b', 1, 1.2), ...slender('c', 2, 2.6)];
		const once = telling(teeth);
		expect(telling([...teeth, ...structuredClone(teeth)])).toEqual(once);
		expect(telling([...teeth].reverse())).toEqual(once);
		// the same shape in another group is another tooth
		expect(telling([...teeth, ...slender('d', 0)]).teeth).toHaveLength(7);
	});

	it('leaves out teeth that do not show the trait', () => {
		const teeth = [...slender('a', 0, 0.2), ...slender('b', 1, 1.2), ...slender('c', 2, 2.2)];
		const hidden = sampleTooth({ group: 'd', measures: { tipRadius_mm: null } });
		expect(telling([...teeth, hidden]).of.tip.spread).toBe(telling(teeth).of.tip.spread);
	});

	it('is worked out once for an exhibit', () => {
		const teeth = slender('a', 0, 1);
		expect(telling(teeth)).toBe(telling(teeth));
	});
});
