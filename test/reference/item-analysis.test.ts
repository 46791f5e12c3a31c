import { sampleCorrelation, variance as sampleVarianceOf } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { chanceCorrected, difficulty, wilson } from '../../src/lib/domain/quiz/items/difficulty';
import { distractors } from '../../src/lib/domain/quiz/items/distractors';
import {
	discrimination,
	discriminationOf,
	groupSize,
	groupWeights,
	reading,
} from '../../src/lib/domain/quiz/items/groups';
import { correctedItemTotal, pointBiserial, variance } from '../../src/lib/domain/quiz/items/pointBiserial';
import {
	kr20,
	kr21,
	spearmanBrown,
	standardError,
	totalsOf,
} from '../../src/lib/domain/quiz/items/reliability';

// Ten pupils, five questions, worked by hand and checked with a general numerical library. Formulas: Kuder & Richardson 1937;
// Kelley 1939 (groups of 27 %); LeBlanc & Cox 2017 (corrected r); Wilson 1927.
const A = '11111 11110 11101 11100 11010 10100 11000 10000 01000 00001'
	.split(' ')
	.map((row) => [...row].map((mark) => mark === '1'));
const item = (k: number): boolean[] => A.map((row) => row[k]);
const totals = totalsOf(A);

describe('item analysis, ten pupils and five questions', () => {
	it('totals, difficulty', () => {
		expect(totals).toEqual([5, 4, 4, 3, 3, 2, 2, 1, 1, 1]);
		expect([0, 1, 2, 3, 4].map((k) => difficulty(item(k).filter(Boolean).length, 10))).toEqual([
			0.8, 0.7, 0.5, 0.3, 0.3,
		]);
	});

	it('groups of three and D', () => {
		const expected = [0.6667, 0.6667, 1, 0.6667, 0.3333];
		expect(groupSize(10)).toBe(3);
		expected.forEach((d, k) => expect(discrimination(item(k), totals)).toBeCloseTo(d, 4));
	});

	it('point-biserial and corrected correlations', () => {
		const plain = [0.5898, 0.6113, 0.7372, 0.6757, 0.3539];
		const corrected = [0.343, 0.3266, 0.4789, 0.4166, 0.0172];
		plain.forEach((r, k) => expect(pointBiserial(item(k), totals)).toBeCloseTo(r, 4));
		corrected.forEach((r, k) => expect(correctedItemTotal(item(k), totals)).toBeCloseTo(r, 4));
	});

	it('agrees with a general library: Pearson and variance', () => {
		for (let k = 0; k < 5; k += 1)
			expect(pointBiserial(item(k), totals)).toBeCloseTo(sampleCorrelation(item(k).map(Number), totals), 10);
		expect(variance(totals)).toBeCloseTo(sampleVarianceOf(totals), 12);
		expect(variance(totals)).toBeCloseTo(1.84, 12);
	});

	it('KR-20 with one kind of variance on both sides, never the mixed .6141', () => {
		expect(kr20(A)).toBeCloseTo(0.5435, 4);
		expect(Math.abs(kr20(A)! - 0.6141)).toBeGreaterThan(0.05);
		expect(kr21(A)).toBeCloseTo(0.4022, 4);
		expect(standardError(totals, kr20(A)!)).toBeCloseTo(0.9165, 4);
		expect(spearmanBrown(kr20(A)!, 2)).toBeCloseTo(0.7042, 4);
	});
});

// 40 answers, key B: all A9 B22 C8 D1; upper group of 11: 1/8/2/0; lower group: 4/3/3/1
describe('item analysis, one question of forty answers', () => {
	const counts = [
		{ option: 'A', right: false, all: 9, upper: 1, lower: 4 },
		{ option: 'B', right: true, all: 22, upper: 8, lower: 3 },
		{ option: 'C', right: false, all: 8, upper: 2, lower: 3 },
		{ option: 'D', right: false, all: 1, upper: 0, lower: 1 },
	];

	it('difficulty, group size, D and distractors', () => {
		expect(difficulty(22, 40)).toBe(0.55);
		expect(groupSize(40)).toBe(11);
		expect((8 + 3) / 22).toBe(0.5);
		const read = distractors(counts, 11);
		expect(read.map(({ discrimination: d }) => Number(d!.toFixed(4)))).toEqual([
			-0.2727, 0.4545, -0.0909, -0.0909,
		]);
		expect(read.map(({ functioning }) => functioning)).toEqual([true, true, true, false]);
		expect(read[3].share).toBe(0.025);
		expect(chanceCorrected(0.55, 4)).toBeCloseTo(0.4, 12);
	});

	it('Wilson intervals', () => {
		expect(wilson(22, 40)!.low).toBeCloseTo(0.398, 3);
		expect(wilson(22, 40)!.high).toBeCloseTo(0.693, 3);
		expect(wilson(7, 10)!.low).toBeCloseTo(0.397, 3);
		expect(wilson(7, 10)!.high).toBeCloseTo(0.892, 3);
	});
});

describe('item analysis, edges', () => {
	it('sizes of groups, a half rounded up', () => {
		expect([10, 20, 30, 37, 50, 100].map(groupSize)).toEqual([3, 5, 8, 10, 14, 27]);
	});

	it('what is undefined is null, not 0', () => {
		const all = [true, true, true];
		expect(difficulty(3, 3)).toBe(1);
		expect(pointBiserial(all, [1, 2, 3])).toBeNull();
		expect(pointBiserial([true, false], [2, 2])).toBeNull();
		expect(difficulty(0, 0)).toBeNull();
		expect(wilson(0, 0)).toBeNull();
		expect(
			kr20([
				[true, true],
				[true, true],
			]),
		).toBeNull();
		expect(kr20([])).toBeNull();
		expect(discrimination([true], [1])).toBeNull();
		expect(discriminationOf(1, 0, 0)).toBeNull();
		expect(distractors([], 3)).toEqual([]);
	});

	it('KR-20 can be negative and then has no standard error', () => {
		const odd = [
			[true, false],
			[false, true],
			[true, false],
			[true, true],
		];
		expect(kr20(odd)!).toBeLessThan(0);
		expect(standardError(totalsOf(odd), kr20(odd)!)).toBeNull();
	});

	it('ties at the cut are shared, so that the order of rows decides nothing', () => {
		const tied = [3, 2, 2, 2, 1, 1, 1, 0];
		const { upper, lower, size } = groupWeights(tied);
		expect(size).toBe(2);
		expect(upper).toEqual([1, 1 / 3, 1 / 3, 1 / 3, 0, 0, 0, 0]);
		expect(lower.slice(4)).toEqual([1 / 3, 1 / 3, 1 / 3, 1]);
		const rights = [true, true, false, false, true, false, false, false];
		const turned = (list: readonly boolean[]) => [...list].reverse();
		expect(discrimination(rights, tied)).toBeCloseTo(
			discrimination(turned(rights), [...tied].reverse())!,
			12,
		);
	});

	it('reads D as Ebel 1965 does', () => {
		expect([0.45, 0.4, 0.35, 0.25, 0.1, -0.1].map(reading)).toEqual([
			'very-good',
			'very-good',
			'good',
			'revise',
			'poor',
			'check-key',
		]);
	});
});
