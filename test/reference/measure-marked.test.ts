import { describe, expect, it } from 'vitest';
import { measureCrown } from '../../src/lib/domain/measure/measureCrown';
import type { ToothForm } from '../../src/lib/domain/tooth/form';
import { sculpt } from '../../src/lib/domain/tooth/sculpt';

// A triangular crown carries its mesial and distal edges on the labial side, so the plane of its base is told by
// the labial mark, not by where the apex stands. Also a curved, rooted one, whose base no flat end shows.
const forms: Record<string, ToothForm> = {
	'triangular, broken at its base': {
		crownHeight_mm: 50,
		baseLength_mm: 25,
		baseWidth_mm: 21,
		sections: [{ at: 0, shape: 'triangular' }],
		taper: 'cone',
		curve: { distal_deg: 14, lingual_deg: 14, startsAt: 0.2 },
		tipRadius_mm: 1.1,
		carinae: [],
		root: { state: 'none' },
	},
	'curved, with its root': {
		crownHeight_mm: 44,
		baseLength_mm: 12.5,
		baseWidth_mm: 10.5,
		sections: [{ at: 0, shape: 'oval' }],
		taper: 'needle',
		curve: { distal_deg: 10, lingual_deg: 28, startsAt: 0.2 },
		tipRadius_mm: 0.5,
		carinae: [],
		root: { state: 'full', length_mm: 40, swelling: 1.1, folded: false },
	},
};

describe('a crown measured between its marks', () => {
	for (const [name, form] of Object.entries(forms))
		it(`gives back its height, base and tip within 1 % (${name})`, () => {
			const made = sculpt(form);
			if (!made.ok) throw new Error(JSON.stringify(made.problem));
			const measured = measureCrown(made.value.mesh, { marks: made.value.marks });
			if (!measured.ok) throw new Error(measured.problem.message);
			const { axialHeight_mm, crownBaseLength_mm, crownBaseWidth_mm, tipRadius_mm } = measured.value;
			expect(Math.abs(axialHeight_mm / form.crownHeight_mm - 1)).toBeLessThan(0.01);
			expect(Math.abs(crownBaseLength_mm / form.baseLength_mm - 1)).toBeLessThan(0.01);
			expect(Math.abs(crownBaseWidth_mm / form.baseWidth_mm - 1)).toBeLessThan(0.01);
			expect(Math.abs((tipRadius_mm ?? 0) / form.tipRadius_mm - 1)).toBeLessThan(0.1);
		});
});
