import { describe, expect, it } from 'vitest';
import { formFacts } from '../../../src/lib/domain/compare/formFacts';
import type { SectionStop, ToothForm } from '../../../src/lib/domain/tooth/form';

const FORM: ToothForm = {
	crownHeight_mm: 30,
	baseLength_mm: 16,
	baseWidth_mm: 10,
	sections: [{ at: 0, shape: 'blade' }],
	taper: 'bullet',
	curve: { distal_deg: 18, lingual_deg: 0, startsAt: 0.3 },
	tipRadius_mm: 0.8,
	carinae: [
		{ where: 'lingual', prominence_mm: 0.6, from: 0.05, serrationsPer5mm: 8 },
		{ where: 30, prominence_mm: 0.6, from: 0.05 },
	],
	ridges: { count: 12, height_mm: 0.2, sides: 'labial', from: 0, to: 0.7, alternating: false },
	root: { state: 'resorbed', length_mm: 6, pitSide: 'mesial', pitDepth_mm: 3 },
	wear: { tipWornTo_mm: 29, facets: [{ side: 'distal', angle_deg: 20, depth_mm: 1, at: 0.8 }] },
};

describe('formFacts', () => {
	it('says what a form says', () => {
		expect(formFacts(FORM)).toEqual({
			carinae_deg: [270, 30],
			serrationsPer5mm: 8,
			ridges: { count: 12, sides: 'labial' },
			section: 'blade',
			root: 'resorbed',
			pitSide: 'mesial',
			facetSides: ['distal'],
			tipWorn: true,
		});
	});

	it('says nothing of what a form lacks', () => {
		const bare: ToothForm = { ...FORM, carinae: [], root: { state: 'none' } };
		delete bare.ridges;
		delete bare.wear;
		expect(formFacts(bare)).toMatchObject({
			carinae_deg: [],
			serrationsPer5mm: 0,
			ridges: null,
			root: 'none',
			pitSide: null,
			facetSides: [],
			tipWorn: false,
		});
	});

	it.each<[SectionStop[], number, string | null]>([
		[[{ at: 0, shape: 'round' }], 16, 'round'],
		[[{ at: 0, shape: 'round' }], 12, 'oval'],
		[[{ at: 0, shape: 'oval' }], 15, 'round'],
		[[{ at: 0, shape: 'oval' }], 20, 'oval'],
		[[{ at: 0.2, shape: 'flat-sided' }], 12, 'other'],
		[[{ at: 0, shape: 'triangular' }], 12, 'triangular'],
		// wide at the base, narrowed half-way up: 1 * 0.8
		[
			[
				{ at: 0, shape: 'oval' },
				{ at: 1, shape: 'oval', widthFactor: 0.6 },
			],
			16,
			'oval',
		],
		// passes from one shape to another there
		[
			[
				{ at: 0, shape: 'oval' },
				{ at: 0.7, shape: 'blade' },
			],
			12,
			null,
		],
		// given from the tip down, and with the change below mid-crown
		[
			[
				{ at: 0.3, shape: 'blade' },
				{ at: 0, shape: 'oval' },
			],
			12,
			'blade',
		],
	])('tells the shape half-way up: %j, %d mm wide and 16 mm long is %s', (sections, baseWidth_mm, shape) => {
		expect(formFacts({ ...FORM, sections, baseWidth_mm }).section).toBe(shape);
	});
});
