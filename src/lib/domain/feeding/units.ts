/** Units of older and American works in SI. Exact by definition: 1 lb = 0.45359237 kg, g = 9.80665 m/s2, 1 in = 25.4 mm. */
const NEWTONS_PER_POUND = 0.45359237 * 9.80665;

/** Pounds of force in newtons. */
export const poundsToNewtons = (force_lbf: number): number => force_lbf * NEWTONS_PER_POUND;

/** Pounds of force on a square inch in megapascals (N / mm2). */
export const psiToMegapascals = (pressure_psi: number): number =>
	(pressure_psi * NEWTONS_PER_POUND) / 25.4 ** 2;

/** Lines, the twelfths of an inch of 19th-century works, in mm. */
export const linesToMillimetres = (lines: number): number => (lines * 25.4) / 12;

/** Weight of a mass, N: F = m g at standard gravity. */
export const weight_N = (mass_kg: number): number => mass_kg * 9.80665;
