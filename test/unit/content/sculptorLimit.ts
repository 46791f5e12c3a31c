import { checkForm } from '../../../src/lib/domain/tooth/checkForm';
import type { ToothForm } from '../../../src/lib/domain/tooth/form';

/** The model of skm-0001 in validContent.ts. */
const FORM: ToothForm = {
	crownHeight_mm: 38.1,
	baseLength_mm: 25.4,
	baseWidth_mm: 21.17,
	sections: [
		{ at: 0, shape: 'oval' },
		{ at: 0.7, shape: 'blade', widthFactor: 0.9 },
	],
	taper: 'bullet',
	curve: { distal_deg: 14, lingual_deg: 6, startsAt: 0.3 },
	tipRadius_mm: 1.2,
	carinae: [{ where: 'mesial', prominence_mm: 0.7, from: 0.05 }],
	root: { state: 'resorbed', length_mm: 7, pitSide: 'lingual', pitDepth_mm: 5 },
	wear: { facets: [{ side: 'labial', angle_deg: 20, depth_mm: 1.2, at: 0.8 }] },
};

/** The most that the sculptor allows when that model is changed so, three figures, rounded down. */
export function sculptorLimit(change: Partial<ToothForm>): number {
	const max = checkForm({ ...FORM, ...change })?.max;
	if (max === undefined) throw new Error('sculptorLimit: this change has no limit');
	const figures = 10 ** (2 - Math.floor(Math.log10(max)));
	return Math.floor(max * figures) / figures;
}
