import { describe, expect, it } from 'vitest';
import { apart, erf, isAlike } from '../../../src/lib/domain/compare/apart';
import { TRAITS, type Trait, type TraitId, type TraitValue } from '../../../src/lib/domain/compare/traits';

const trait = (id: TraitId, value: TraitValue | null): Trait => ({
	id,
	kind: TRAITS[id].kind,
	value,
	from: 'measured',
});

describe('erf', () => {
	it('agrees with the tables', () => {
		// Abramowitz & Stegun 1964, table 7.1
		expect(erf(0)).toBeCloseTo(0, 6);
		expect(erf(0.5)).toBeCloseTo(0.5204998778, 6);
		expect(erf(1)).toBeCloseTo(0.8427007929, 6);
		expect(erf(1.5)).toBeCloseTo(0.9661051465, 6);
		expect(erf(2)).toBeCloseTo(0.995322265, 6);
	});
});

describe('apart', () => {
	it('measures numbers by their spread, lengths and ratios by logarithms', () => {
		// ln 2 apart at a spread of ln 2: one standard deviation, erf(1/2)
		expect(apart(trait('size', 10), trait('size', 20), Math.LN2)).toBeCloseTo(0.5204998778, 6);
		expect(apart(trait('size', 40), trait('size', 20), Math.LN2)).toBeCloseTo(0.5204998778, 6);
		// 24 degrees at a spread of 12: erf(1)
		expect(apart(trait('curvature', 6), trait('curvature', 30), 12)).toBeCloseTo(0.8427007929, 6);
		expect(apart(trait('curvature', 6), trait('curvature', 6), 12)).toBe(0);
	});

	it('sets categories wholly apart, but half where they pass into each other', () => {
		expect(apart(trait('section', 'round'), trait('section', 'triangular'), 1)).toBe(1);
		expect(apart(trait('section', 'oval'), trait('section', 'round'), 1)).toBe(0.5);
		expect(apart(trait('section', 'oval'), trait('section', 'oval'), 1)).toBe(0);
		expect(apart(trait('carinae', 2), trait('carinae', 3), 1)).toBe(1);
		expect(apart(trait('serrations', true), trait('serrations', false), 1)).toBe(1);
	});

	it('does not compare what is not known', () => {
		expect(apart(trait('tip', null), trait('tip', 0.1), 1)).toBeNull();
		expect(apart(trait('tip', 0), trait('tip', 0.1), 1)).toBeNull();
		// one side of a scan may be either; ridges all round are surely another thing
		expect(apart(trait('ridgeSide', 'one-side'), trait('ridgeSide', 'labial'), 1)).toBeNull();
		expect(apart(trait('ridgeSide', 'one-side'), trait('ridgeSide', 'all'), 1)).toBe(1);
	});
});

describe('isAlike', () => {
	it('takes numbers within what measuring tells apart for the same', () => {
		expect(isAlike(trait('slenderness', 2), trait('slenderness', 2.15))).toBe(true);
		expect(isAlike(trait('slenderness', 2), trait('slenderness', 2.17))).toBe(false);
		expect(isAlike(trait('slenderness', 2.17), trait('slenderness', 2))).toBe(false);
		expect(isAlike(trait('curvature', 0), trait('curvature', 5))).toBe(true);
		expect(isAlike(trait('curvature', 0), trait('curvature', 5.1))).toBe(false);
	});

	it('takes counts, categories and yes-no as they are', () => {
		expect(isAlike(trait('carinae', 2), trait('carinae', 2))).toBe(true);
		expect(isAlike(trait('carinae', 2), trait('carinae', 3))).toBe(false);
		expect(isAlike(trait('section', 'oval'), trait('section', 'round'))).toBe(false);
		expect(isAlike(trait('tipWorn', false), trait('tipWorn', false))).toBe(true);
		expect(isAlike(trait('tipWorn', null), trait('tipWorn', null))).toBeNull();
		expect(isAlike(trait('ridgeSide', 'one-side'), trait('ridgeSide', 'lingual'))).toBeNull();
		expect(isAlike(trait('ridgeSide', 'one-side'), trait('ridgeSide', 'one-side'))).toBe(true);
	});
});
