/** What an elliptical section resists bending with. Length runs mesiodistally, width labiolingually. */
export interface EllipseSection {
	area_mm2: number;
	/** second moments of area, mm4: bending along the jaw (over the length) and across it (over the width) */
	I_MD_mm4: number;
	I_LL_mm4: number;
	/** section moduli, mm3: I over half the diameter in the plane of bending */
	Z_MD_mm3: number;
	Z_LL_mm3: number;
}

/**
 * Section values of a solid ellipse from its two diameters, mm. Textbook formulas as used on teeth by Van Valkenburgh &
 * Ruff 1987, J. Zool. 212: 379-397: I_MD = pi L^3 W / 64, I_LL = pi L W^3 / 64. Exact for ellipses; a lens has less.
 */
export function ellipseSection(length_mm: number, width_mm: number): EllipseSection {
	return {
		area_mm2: (Math.PI * length_mm * width_mm) / 4,
		I_MD_mm4: (Math.PI * length_mm ** 3 * width_mm) / 64,
		I_LL_mm4: (Math.PI * length_mm * width_mm ** 3) / 64,
		Z_MD_mm3: (Math.PI * length_mm ** 2 * width_mm) / 32,
		Z_LL_mm3: (Math.PI * length_mm * width_mm ** 2) / 32,
	};
}
