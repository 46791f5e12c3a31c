import type { ToothForm } from '../tooth/form';
import type { Indenter } from './contactArea';
import type { CrownBeam } from './crownBeam';

/**
 * The same shape in another size. At the same pressures every area and so every force goes with the square of the size
 * (dimensional analysis): what a tooth of twice the length needs, and what it stands, is four times as much.
 */
export const forceScale = (k: number): number => k ** 2;

export function scaledIndenter(indenter: Indenter, k: number): Indenter {
	return {
		...indenter,
		tipRadius_mm: indenter.tipRadius_mm * k,
		height_mm: indenter.height_mm * k,
		baseLength_mm: indenter.baseLength_mm * k,
		baseWidth_mm: indenter.baseWidth_mm * k,
	};
}

export function scaledBeam(beam: CrownBeam, k: number): CrownBeam {
	return {
		stations: beam.stations.map(({ below_mm, length_mm, width_mm }) => ({
			below_mm: below_mm * k,
			length_mm: length_mm * k,
			width_mm: width_mm * k,
		})),
		height_mm: beam.height_mm * k,
	};
}

/**
 * How long a prey a tooth of this height goes with, mm, low and high: so many times its height. `range` comes from content: a
 * rule of thumb of ours, since no published ratio was read.
 */
export const preyLength_mm = (crownHeight_mm: number, range: readonly [number, number]): [number, number] => [
	crownHeight_mm * range[0],
	crownHeight_mm * range[1],
];

/** A form in another size: every length times k, angles, counts and heights as they are. */
export function scaledForm(form: ToothForm, k: number): ToothForm {
	return {
		...form,
		crownHeight_mm: form.crownHeight_mm * k,
		baseLength_mm: form.baseLength_mm * k,
		baseWidth_mm: form.baseWidth_mm * k,
		tipRadius_mm: form.tipRadius_mm * k,
		carinae: form.carinae.map(({ serrationsPer5mm, serrationDepth_mm, ...carina }) => ({
			...carina,
			prominence_mm: carina.prominence_mm * k,
			...(serrationsPer5mm === undefined ? {} : { serrationsPer5mm: serrationsPer5mm / k }),
			...(serrationDepth_mm === undefined ? {} : { serrationDepth_mm: serrationDepth_mm * k }),
		})),
		...(form.ridges ? { ridges: { ...form.ridges, height_mm: form.ridges.height_mm * k } } : {}),
	};
}
