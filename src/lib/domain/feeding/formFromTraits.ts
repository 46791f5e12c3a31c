import { blendedSection } from '../tooth/crownShape';
import type { ToothForm } from '../tooth/form';
import { FORM_LIMITS, FORM_RANGES } from '../tooth/formRanges';
import { limitTraits, type CrownTraits } from './crownTraits';
import type { Thresholds } from './thresholds';

/** Share of the bend that goes backwards; the rest inwards. */
const BACKWARDS = 0.8;
/** Keels lower than this share of the base's half width are left out. */
const LEAST_KEEL = 0.004;
/** How much of a limit is used, so that rounding never crosses it. */
const SAFE = 0.98;

/**
 * A form that can be sculpted (`checkForm` finds no fault) from a crown's traits and its height, mm (about 2 .. 100 for every
 * shape, 0.5 .. 300 for some).
 * Traits outside their limits are led to them. Two smooth edges, mesial and distal; no ridges, no root.
 */
export function formFromTraits(
	wanted: CrownTraits,
	crownHeight_mm: number,
	{ edges }: Pick<Thresholds, 'edges'>,
): ToothForm {
	const traits = limitTraits(wanted);
	const { slenderness, roundness } = traits;
	// every length within what can be sculpted; where one is not, the whole crown is made as large or small as it goes
	const [lowest, highest] = FORM_RANGES.crownHeight_mm;
	const [narrowest] = FORM_RANGES.baseWidth_mm;
	const [, longest] = FORM_RANGES.baseLength_mm;
	const least = Math.max(lowest / slenderness, narrowest / roundness) / SAFE;
	const most = Math.min(highest / slenderness, longest) * SAFE;
	const height = Math.min(most * slenderness, Math.max(least * slenderness, crownHeight_mm));
	const length = height / slenderness;
	const width = length * roundness;
	const half = width / 2;
	const prominence = half * edges.fullShare * traits.edges;
	const bend_deg = Math.min(traits.curve_deg, tightestBend_deg(height, length));
	const form: ToothForm = {
		crownHeight_mm: height,
		baseLength_mm: length,
		baseWidth_mm: width,
		sections: [
			{ at: 0, shape: 'round' },
			{ at: 0.4, shape: 'round', towards: { shape: 'blade', share: traits.lens } },
		],
		taper: 'cone',
		fullness: traits.fullness,
		curve: { distal_deg: bend_deg * BACKWARDS, lingual_deg: bend_deg * (1 - BACKWARDS), startsAt: 0.1 },
		tipRadius_mm: 0,
		carinae:
			traits.edges * edges.fullShare > LEAST_KEEL && prominence >= FORM_RANGES['carinae.prominence_mm'][0]
				? (['mesial', 'distal'] as const).map((where) => ({ where, prominence_mm: prominence, from: 0 }))
				: [],
		root: { state: 'none' },
	};
	const tip = (traits.tip * Math.sqrt(length * width)) / 2;
	return {
		...form,
		tipRadius_mm: Math.max(FORM_RANGES.tipRadius_mm[0], Math.min(tip, bluntestTip_mm(form))),
	};
}

/** Greatest tip radius that `checkForm` allows. */
function bluntestTip_mm(form: ToothForm): number {
	const atTip = blendedSection(form, 1);
	let least = Infinity;
	for (let i = 0; i < 360; i++) {
		const [x, z] = atTip((i * Math.PI) / 180);
		least = Math.min(least, Math.hypot(x, z));
	}
	return SAFE * Math.min(FORM_LIMITS.tipOverRadius * least, FORM_LIMITS.tipOverHeight * form.crownHeight_mm);
}

/** Greatest bend of a crown before its surface folds into itself, degrees; on the safe side of `checkForm`'s limit. */
const tightestBend_deg = (height: number, length: number): number =>
	(SAFE * ((height * 0.9) / (length / 2)) * 0.8 * 180) / Math.PI;
