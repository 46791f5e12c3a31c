import { expect, it } from 'vitest';
import { scaledModel } from '../../../src/lib/content/scaledModel';

it('scaledModel makes lengths larger and leaves angles, shares, counts and words', () => {
	const lines = {
		crown_height_mm: 20,
		curve: { distal_deg: 10, starts_at: 0.3 },
		carinae: [{ where: 90, prominence_mm: 0.333, serrations_per_5mm: 8 }],
		root: { state: 'full', length_mm: 24 },
	};
	expect(scaledModel(lines, 2)).toEqual({
		crown_height_mm: 40,
		curve: { distal_deg: 10, starts_at: 0.3 },
		carinae: [{ where: 90, prominence_mm: 0.67, serrations_per_5mm: 8 }],
		root: { state: 'full', length_mm: 48 },
	});
	expect(scaledModel({ crownHeight_mm: 3, tipWornTo_mm: 2 }, 0.5)).toEqual({
		crownHeight_mm: 1.5,
		tipWornTo_mm: 1,
	});
});
