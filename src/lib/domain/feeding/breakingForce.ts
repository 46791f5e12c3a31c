import { bendingStress, type TipLoad } from './bendingStress';
import type { CrownBeam } from './crownBeam';

/** What it takes to snap a crown. */
export interface Breaking {
	/** Infinity when the load only presses */
	force_N: number;
	/** where it snaps, mm below the tip */
	below_mm: number;
}

/**
 * Force at the tip that snaps a crown: the one whose greatest tension is the strength. Freeman & Lemen 2006, J. Zool. 269
 * use 338 MPa, tension, of adult carnivorans' canines with a solid section: for reptiles an upper figure for teaching.
 */
export function breakingForce(
	beam: CrownBeam,
	load: Omit<TipLoad, 'force_N'>,
	strength_MPa: number,
	steps?: number,
): Breaking {
	const { peak } = bendingStress(beam, { ...load, force_N: 1 }, steps);
	return {
		force_N: peak.tension_MPa > 0 ? strength_MPa / peak.tension_MPa : Infinity,
		below_mm: peak.below_mm,
	};
}

/** How many times the needed force the crown could stand; below 1 it snaps first. Infinity where nothing is needed. */
export const safetyFactor = (breaking_N: number, needed_N: number): number =>
	needed_N > 0 ? breaking_N / needed_N : Infinity;
