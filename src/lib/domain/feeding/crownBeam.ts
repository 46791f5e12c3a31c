import type { CrownMeasures } from '../measure/crownMeasures';

/** A section of the crown seen as a beam. */
export interface BeamStation {
	/** below the tip, along the axis, mm */
	below_mm: number;
	/** mesiodistal */
	length_mm: number;
	/** labiolingual */
	width_mm: number;
}

/** The crown as a beam held at its base and loaded at its tip: stations from the tip down, diameters linear between. */
export interface CrownBeam {
	/** first: where the load enters, below the rounding of the tip; last: the base */
	stations: readonly BeamStation[];
	height_mm: number;
}

/** A truncated cone with round or elliptical section; `tip_mm` 0 is a plain cone. Diameters in mm. */
export function coneBeam(tip_mm: number, base_mm: number, height_mm: number, roundness = 1): CrownBeam {
	return {
		stations: [
			{ below_mm: 0, length_mm: tip_mm, width_mm: tip_mm * roundness },
			{ below_mm: height_mm, length_mm: base_mm, width_mm: base_mm * roundness },
		],
		height_mm,
	};
}

/** Diameters at a depth below the tip, mm; straight between stations, the end values beyond them. */
export function diametersAt(beam: CrownBeam, below_mm: number): { length_mm: number; width_mm: number } {
	const { stations } = beam;
	const after = stations.findIndex((station) => station.below_mm >= below_mm);
	if (after === 0) return stations[0];
	if (after < 0) return stations[stations.length - 1];
	const [a, b] = [stations[after - 1], stations[after]];
	const share = (below_mm - a.below_mm) / (b.below_mm - a.below_mm);
	return {
		length_mm: a.length_mm + share * (b.length_mm - a.length_mm),
		width_mm: a.width_mm + share * (b.width_mm - a.width_mm),
	};
}

/**
 * A measured crown as a beam: its sections, its base, and a tip as wide as its rounding (radius `tipRadius_mm`, twice
 * that across, one radius below the apex), never wider than the section below. Curvature is left out: each section is
 * taken square to the axis.
 */
export function beamOf(
	measures: Pick<CrownMeasures, 'axialHeight_mm' | 'crownBaseLength_mm' | 'crownBaseWidth_mm' | 'sections'>,
	tipRadius_mm: number,
): CrownBeam {
	const { axialHeight_mm: height, crownBaseLength_mm: length, crownBaseWidth_mm: width } = measures;
	const below = [...measures.sections]
		.sort((a, b) => b.at - a.at)
		.map(({ at, length_mm, width_mm }) => ({ below_mm: (1 - at) * height, length_mm, width_mm }));
	const base = { below_mm: height, length_mm: length, width_mm: width };
	const first = below[0] ?? base;
	const tipAt_mm = Math.min(tipRadius_mm, 0.9 * first.below_mm);
	const tip = {
		below_mm: tipAt_mm,
		length_mm: Math.min(2 * tipRadius_mm, first.length_mm),
		width_mm: Math.min(2 * tipRadius_mm, first.width_mm),
	};
	return { stations: [tip, ...below, base], height_mm: height };
}
