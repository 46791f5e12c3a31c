import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	concentration,
	correctedConcentration,
	epsilonSquared,
	etaSquared,
	standardDeviation,
	type Grouped,
} from '../../../src/lib/domain/compare/associations';

const grouped = <T>(groups: Record<string, T[]>): Grouped<T>[] =>
	Object.entries(groups).flatMap(([group, values]) => values.map((value) => ({ group, value })));

/** R's data set PlantGrowth (Dobson 1983, An Introduction to Statistical Modelling, table 7.1): dried weights. */
const PLANT_GROWTH = grouped({
	ctrl: [4.17, 5.58, 5.18, 6.11, 4.5, 4.61, 5.17, 4.53, 5.33, 5.14],
	trt1: [4.81, 4.17, 4.41, 3.59, 5.87, 3.83, 6.03, 4.89, 4.32, 4.69],
	trt2: [6.31, 5.12, 5.54, 5.5, 5.37, 5.29, 4.92, 6.15, 5.8, 5.26],
});

describe('etaSquared', () => {
	it('is the between-group share of the sum of squares', () => {
		// mean 6; total 25+16+9+1+0+1+9+16+25 = 102; within 2+2+2 = 6; 1 - 6/102
		expect(etaSquared(grouped({ a: [1, 2, 3], b: [5, 6, 7], c: [9, 10, 11] }))).toBeCloseTo(96 / 102, 12);
	});

	it('agrees with the published analysis of variance of plant growth', () => {
		// its table prints: group, 2 degrees of freedom, 3.766; residuals, 27 degrees of freedom, 10.492
		expect(etaSquared(PLANT_GROWTH)).toBeCloseTo(3.766 / (3.766 + 10.492), 4);
	});

	it('is 1 for groups of equal values and 0 for groups of equal means or no variation', () => {
		expect(etaSquared(grouped({ a: [0.1, 0.1, 0.1], b: [0.3, 0.3] }))).toBe(1);
		expect(etaSquared(grouped({ a: [1, 3], b: [2, 2] }))).toBe(0);
		expect(etaSquared(grouped({ a: [0.1, 0.1, 0.1], b: [0.1] }))).toBe(0);
		expect(etaSquared([])).toBe(0);
	});
});

describe('epsilonSquared', () => {
	it('sets mean squares in place of sums', () => {
		// n = 9, k = 3: 1 - (6/6) / (102/8) = 1 - 1/12.75
		expect(epsilonSquared(grouped({ a: [1, 2, 3], b: [5, 6, 7], c: [9, 10, 11] }))).toBeCloseTo(
			1 - 1 / 12.75,
			12,
		);
	});

	it('agrees with the published F of plant growth', () => {
		// F(2, 27) = 4.846; epsilon^2 = df (F - 1) / (df F + df_within) = 2 * 3.846 / (9.692 + 27)
		expect(epsilonSquared(PLANT_GROWTH)).toBeCloseTo((2 * 3.846) / (9.692 + 27), 4);
	});

	it('is never below 0, and silent where no group has two values or all are equal', () => {
		expect(epsilonSquared(grouped({ a: [1, 3], b: [2, 2] }))).toBe(0);
		expect(epsilonSquared(grouped({ a: [1], b: [2], c: [9] }))).toBeNull();
		expect(epsilonSquared(grouped({ a: [0.1, 0.1], b: [0.1] }))).toBeNull();
		expect(epsilonSquared([])).toBeNull();
	});

	it('is 0 on average over all ways of dealing values out to groups, but for what is below 0; eta squared is not', () => {
		const ways = orders([1, 2, 4, 8, 16, 32]).map(([a, b, c, d, e, f]) =>
			grouped({ x: [a, b], y: [c, d], z: [e, f] }),
		);
		expect(ways).toHaveLength(720);
		let raw = 0;
		let free = 0;
		for (const data of ways) {
			// 1 - (1 - eta^2) (n - 1) / (n - k), not stopped at 0
			const value = 1 - (1 - etaSquared(data)) * (5 / 3);
			expect(epsilonSquared(data)).toBeCloseTo(Math.max(0, value), 10);
			raw += etaSquared(data) / 720;
			free += value / 720;
		}
		// by chance (k - 1) / (n - 1) of the variance lies between three groups of two
		expect(raw).toBeCloseTo(2 / 5, 10);
		expect(free).toBeCloseTo(0, 10);
	});
});

function orders(values: number[]): number[][] {
	if (values.length === 0) return [[]];
	return values.flatMap((value, i) =>
		orders(values.filter((_, k) => k !== i)).map((rest) => [value, ...rest]),
	);
}

describe('concentration', () => {
	it('is the share of a category’s variation between groups', () => {
		// x 3, y 2, z 1 of 6: total 6 - (9+4+1)/6 = 11/3; within group c: 2 - (1+1)/2 = 1; 1 - 3/11
		const data = grouped({ a: ['x', 'x'], b: ['y', 'y'], c: ['z', 'x'] });
		expect(concentration(data)).toBeCloseTo(8 / 11, 12);
		// n = 6, k = 3: 1 - (1/3) / ((11/3)/5) = 1 - 5/11
		expect(correctedConcentration(data)).toBeCloseTo(6 / 11, 12);
	});

	it('is the square of Cramer’s V on a trait of two values, and eta squared of it as 0 and 1', () => {
		// table of yes and no: a 3/1, b 1/3, c 2/2; expected 2 in every cell
		// chi^2 = (1+1+1+1+0+0)/2 = 2; n = 12; V^2 = (2/12) / min(3-1, 2-1) = 1/6
		const counts: Record<string, [number, number]> = { a: [3, 1], b: [1, 3], c: [2, 2] };
		const data = Object.entries(counts).flatMap(([group, [yes, no]]) => [
			...Array.from({ length: yes }, () => ({ group, value: 'yes' })),
			...Array.from({ length: no }, () => ({ group, value: 'no' })),
		]);
		expect(concentration(data)).toBeCloseTo(1 / 6, 12);
		expect(
			etaSquared(data.map(({ group, value }) => ({ group, value: value === 'yes' ? 1 : 0 }))),
		).toBeCloseTo(1 / 6, 12);
	});

	it('of categories that tell every group apart is 1, corrected or not', () => {
		const data = grouped({ a: ['x', 'x'], b: ['y'], c: ['z'] });
		expect(concentration(data)).toBe(1);
		expect(correctedConcentration(data)).toBe(1);
		expect(correctedConcentration(grouped({ a: ['x'], b: ['y'] }))).toBeNull();
		expect(correctedConcentration(grouped({ a: ['x', 'x'], b: ['x'] }))).toBeNull();
	});

	it('is the pooled eta squared of its categories as 0 and 1, and stays when all data are doubled', () => {
		const value = fc.record({ group: fc.constantFrom('a', 'b', 'c'), value: fc.constantFrom('x', 'y', 'z') });
		fc.assert(
			fc.property(fc.array(value, { minLength: 2, maxLength: 30 }), (data) => {
				let between = 0;
				let total = 0;
				for (const category of ['x', 'y', 'z']) {
					const numbers = data.map((entry) => ({
						group: entry.group,
						value: entry.value === category ? 1 : 0,
					}));
					const p = numbers.filter((entry) => entry.value === 1).length / data.length;
					total += p * (1 - p);
					between += p * (1 - p) * etaSquared(numbers);
				}
				expect(concentration(data)).toBeCloseTo(total > 0 ? between / total : 0, 9);
				expect(concentration([...data, ...data])).toBeCloseTo(concentration(data), 9);
			}),
			{ seed: 7, numRuns: 200 },
		);
	});
});

describe('standardDeviation', () => {
	it('divides by n - 1', () => {
		// mean 5; 9+1+1+1+0+0+4+16 = 32; 32/7
		expect(standardDeviation([2, 4, 4, 4, 5, 5, 7, 9])).toBeCloseTo(Math.sqrt(32 / 7), 12);
		expect(standardDeviation([3])).toBeNull();
		expect(standardDeviation([0.1, 0.1, 0.1])).toBeNull();
	});
});
