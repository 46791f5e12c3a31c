import type { ValidityNote } from './note';

/**
 * Force that flakes a chip off an edge, N: F = 9.3 T h^1.5 (Chai & Lawn 2007, recalled, not looked up again; the note says
 * so), with toughness T in MPa m^0.5 and h, how far from the edge the load sits, in mm. Eightfold for four times h.
 */
export function chipForce(
	toughness_MPa_sqrtm: number,
	fromEdge_mm: number,
): { force_N: number; notes: ValidityNote[] } {
	const force_N = 9.3 * toughness_MPa_sqrtm * (fromEdge_mm / 1000) ** 1.5 * 1e6;
	return { force_N, notes: [{ code: 'recalled' }] };
}
