import { describe, expect, it } from 'vitest';
import type { CrownMeasures } from '../../../src/lib/domain/measure/crownMeasures';
import { unlikeness } from '../../../src/lib/domain/measure/unlikeness';

const crown = (crownHeightRatio: number, crownBaseRatio: number) =>
	({ crownHeightRatio, crownBaseRatio }) as CrownMeasures;

describe('unlikeness', () => {
	it('is nothing between crowns of one shape, and the same either way round', () => {
		expect(unlikeness(crown(2, 0.8), crown(2, 0.8))).toBe(0);
		expect(unlikeness(crown(3, 0.5), crown(1, 0.9))).toBeCloseTo(
			unlikeness(crown(1, 0.9), crown(3, 0.5)),
			12,
		);
	});

	it('is 1 where one crown is e times as slender or as round', () => {
		expect(unlikeness(crown(Math.E, 1), crown(1, 1))).toBeCloseTo(1, 12);
		expect(unlikeness(crown(2, 1), crown(2, 1 / Math.E))).toBeCloseTo(1, 12);
	});
});
