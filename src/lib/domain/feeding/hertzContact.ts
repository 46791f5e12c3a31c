import type { ValidityNote } from './note';

export interface Elastic {
	/** Young's modulus */
	E_GPa: number;
	/** Poisson's ratio */
	nu: number;
}

/** 1/E* = (1-nu1^2)/E1 + (1-nu2^2)/E2, GPa. Textbook (Hertz). */
export function contactModulus_GPa(one: Elastic, other: Elastic): number {
	return 1 / ((1 - one.nu ** 2) / one.E_GPa + (1 - other.nu ** 2) / other.E_GPa);
}

export interface HertzContact {
	/** radius of the touching circle */
	radius_mm: number;
	/** pressure in its middle, and its mean */
	p0_MPa: number;
	pMean_MPa: number;
	/** how far the two come together */
	depth_mm: number;
	/** greatest tension, at the edge of the circle, on the body of Poisson's ratio `nu` */
	edgeTension_MPa: number;
	notes: ValidityNote[];
}

/** contact radius over tip radius above which the parabola of Hertz is no sphere any more; common practice, no source */
const LARGEST_CONTACT = 0.3;
/** Bone has yielded above about this pressure: Rhee et al., hardness of turtle shell's bone layers, about 1 GPa. */
export const YIELDS_MPa = 1000;

/**
 * Elastic contact of a round tip on a flat (Hertz, textbook): a = (3 F R / 4 E*)^(1/3), p0 = 3F / 2 pi a^2, mean 2/3 p0,
 * depth a^2/R, edge tension (1 - 2 nu) p0 / 3. Elastic only: above `yields_MPa` the flat has given way, which a note says.
 */
export function hertzContact(
	force_N: number,
	tipRadius_mm: number,
	modulus_GPa: number,
	nu = 0.3,
	yields_MPa = YIELDS_MPa,
): HertzContact {
	const radius_mm = Math.cbrt((3 * force_N * tipRadius_mm) / (4 * modulus_GPa * 1000));
	const p0_MPa = force_N > 0 ? (3 * force_N) / (2 * Math.PI * radius_mm ** 2) : 0;
	const notes: ValidityNote[] = [];
	if (p0_MPa > yields_MPa) notes.push({ code: 'beyond-elastic', limit: yields_MPa, found: p0_MPa });
	if (radius_mm > LARGEST_CONTACT * tipRadius_mm)
		notes.push({ code: 'contact-not-small', limit: LARGEST_CONTACT, found: radius_mm / tipRadius_mm });
	return {
		radius_mm,
		p0_MPa,
		pMean_MPa: (2 * p0_MPa) / 3,
		depth_mm: tipRadius_mm > 0 ? radius_mm ** 2 / tipRadius_mm : 0,
		edgeTension_MPa: ((1 - 2 * nu) * p0_MPa) / 3,
		notes,
	};
}
