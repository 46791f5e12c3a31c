import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Feeding } from '../../../src/lib/content/feedingContent';
import { TRAIT_LIMITS, traitsAt, type CrownTraits } from '../../../src/lib/domain/feeding/crownTraits';
import { formAt } from '../../../src/lib/domain/feeding/formAt';
import { formFromTraits } from '../../../src/lib/domain/feeding/formFromTraits';
import {
	asPosition,
	distanceBetween,
	fromPlane,
	MIDDLE,
	toPlane,
} from '../../../src/lib/domain/feeding/position';
import { checkForm } from '../../../src/lib/domain/tooth/checkForm';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import { demoFeeding } from '../../reference/feedingContent';

let feeding: Feeding;
beforeAll(async () => {
	feeding = await demoFeeding();
});

const share = fc.double({ min: 0, max: 1, noNaN: true });
const anywhere = fc.tuple(share, share, share).map(([a, b, c]) => asPosition(a, b, c));
const height = fc.double({ min: 0.5, max: 300, noNaN: true });

describe('formAt', () => {
	it('always makes a form that can be sculpted', () => {
		fc.assert(
			fc.property(anywhere, height, (at, mm) => {
				expect(checkForm(formAt(at, mm, feeding.thresholds))).toBeNull();
			}),
			{ numRuns: 400 },
		);
	});

	it('also from traits of every kind and at heights beyond the limits', () => {
		const traits = fc.record(
			Object.fromEntries(
				Object.entries(TRAIT_LIMITS).map(([key, [low, high]]) => [
					key,
					fc.double({ min: low - 1, max: high + 1, noNaN: true }),
				]),
			),
		) as unknown as fc.Arbitrary<CrownTraits>;
		fc.assert(
			fc.property(traits, fc.double({ min: 0.1, max: 500, noNaN: true }), (wanted, mm) => {
				expect(checkForm(formFromTraits(wanted, mm, feeding.thresholds))).toBeNull();
			}),
			{ numRuns: 400 },
		);
	});

	it('closes as a mesh over the whole triangle', () => {
		for (let i = 0; i <= 4; i++)
			for (let j = 0; j <= 4 - i; j++) {
				const made = sculpt(formAt(asPosition(i, j, 4 - i - j), 30, feeding.thresholds), { detail: 'draft' });
				expect(made.ok).toBe(true);
			}
	});

	it('a small step in the triangle is a small step of every trait', () => {
		const scale = (key: keyof CrownTraits): number => TRAIT_LIMITS[key][1] - TRAIT_LIMITS[key][0];
		fc.assert(
			fc.property(anywhere, fc.double({ min: 0, max: 6.283, noNaN: true }), (from, way) => {
				const [x, y] = toPlane(from);
				const to = fromPlane(x + 0.001 * Math.cos(way), y + 0.001 * Math.sin(way));
				const [a, b] = [traitsAt(from, feeding.thresholds), traitsAt(to, feeding.thresholds)];
				for (const key of Object.keys(TRAIT_LIMITS) as (keyof CrownTraits)[])
					expect(Math.abs(a[key] - b[key]) / scale(key)).toBeLessThan(0.03);
			}),
			{ numRuns: 300 },
		);
	});

	it('is a needle at pierce, a two-edged blade at cut, a dome at crush, a stout cone in the middle', () => {
		const at = (p: number, c: number, k: number) => traitsAt(asPosition(p, c, k), feeding.thresholds);
		expect(at(1, 0, 0)).toMatchObject({ roundness: 1, edges: 0, lens: 0 });
		expect(at(1, 0, 0).slenderness).toBeGreaterThan(3.5);
		expect(at(0, 1, 0).roundness).toBeLessThan(0.5);
		expect(at(0, 1, 0).edges).toBeGreaterThan(0.9);
		expect(at(0, 1, 0).lens).toBeGreaterThan(0.9);
		expect(at(0, 0, 1)).toMatchObject({ roundness: 1, edges: 0, lens: 0, fullness: 2 });
		expect(at(0, 0, 1).slenderness).toBeLessThan(1);
		const middle = traitsAt(MIDDLE, feeding.thresholds);
		expect(middle.slenderness).toBeCloseTo(feeding.thresholds.slenderness.middle, 6);
		expect(formAt(asPosition(0, 1, 0), 30, feeding.thresholds).carinae).toHaveLength(2);
		expect(formAt(asPosition(1, 0, 0), 30, feeding.thresholds).carinae).toHaveLength(0);
	});

	it('has the height that is asked for, and the same shape at every height', () => {
		const [small, large] = [8, 80].map((mm) => formAt(MIDDLE, mm, feeding.thresholds));
		expect([small.crownHeight_mm, large.crownHeight_mm]).toEqual([8, 80]);
		expect(large.baseLength_mm / small.baseLength_mm).toBeCloseTo(10, 9);
		expect(large.tipRadius_mm / small.tipRadius_mm).toBeCloseTo(10, 9);
		expect(distanceBetween(MIDDLE, asPosition(1, 1, 1))).toBe(0);
	});
});
