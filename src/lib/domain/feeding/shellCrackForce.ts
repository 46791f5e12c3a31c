import type { ValidityNote } from './note';

/** Top of a crown as a shell meets it. */
export interface CrushFace {
	/** radius of the top, mm: above 0 domed (small = a tall or thin cusp), Infinity flat, below 0 cupped (hollow) */
	radius_mm: number;
	/** half the width of the top, mm: where the rim of a cup stands */
	halfWidth_mm: number;
}

/** A plate of shell that lies on something soft and is held all round. */
export interface ShellPlate {
	thickness_mm: number;
	/** how round it is outside, mm; also how far from the tooth it is held */
	radius_mm: number;
	/** tension that breaks it */
	strength_MPa: number;
	nu: number;
}

export interface ShellCrack {
	force_N: number;
	/** radius over which the tooth presses, mm */
	contact_mm: number;
	notes: ValidityNote[];
}

/**
 * Force that cracks a shell by bending it, N. Teaching model: the shell as a clamped round plate pressed in its middle,
 * sigma = 3 F (1 + nu) ln(r / c') / (2 pi t^2), c' = sqrt(1.6 c^2 + t^2) - 0.675 t while c < 0.5 t, else c (textbook,
 * Westergaard; common practice, no source). The tooth presses over c: by Hertz where the two are round, at the rim where a cup
 * is wider than the shell is round. Stiffness of the contact: `modulus_GPa` (E*).
 *
 * It ranks faces as measured by Crofts & Summers 2014 (doi:10.1098/rsif.2013.1053): tall or thin cusps break shells best,
 * domed and flat beat cupped, thick shells need more. Its newtons are no measurement: every result says so.
 */
export function shellCrackForce(face: CrushFace, shell: ShellPlate, modulus_GPa: number): ShellCrack {
	const { thickness_mm: t, radius_mm: r, strength_MPa, nu } = shell;
	const notes: ValidityNote[] = [{ code: 'teaching-model' }];
	// curvatures add up; a hollow face takes away from the shell's own
	const closeness = 1 / face.radius_mm + 1 / r;
	const most_mm = Math.min(face.halfWidth_mm, 0.8 * r);
	const forceFor = (contact_mm: number): number => {
		const c = contact_mm < 0.5 * t ? Math.sqrt(1.6 * contact_mm ** 2 + t ** 2) - 0.675 * t : contact_mm;
		return (2 * Math.PI * t ** 2 * strength_MPa) / (3 * (1 + nu) * Math.log(r / Math.min(c, 0.9 * r)));
	};
	let contact_mm = most_mm;
	if (closeness > 0) {
		contact_mm = 0;
		for (let i = 0; i < 60; i++) {
			const force_N = forceFor(contact_mm);
			contact_mm = Math.min(most_mm, Math.cbrt((3 * force_N) / (4 * closeness * modulus_GPa * 1000)));
		}
	}
	return { force_N: forceFor(contact_mm), contact_mm, notes };
}
