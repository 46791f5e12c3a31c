import { diametersAt, type CrownBeam } from './crownBeam';
import { ellipseSection } from './ellipseSection';
import type { ValidityNote } from './note';

/** A force at the tip. */
export interface TipLoad {
	force_N: number;
	/** between the force and the crown's axis: 0 straight down the crown, 90 square to it */
	angle_deg: number;
	/** which way the crown is bent: along the jaw or across it */
	plane: 'MD' | 'LL';
	/** how far below the tip it acts, mm; 0 where left out. A tooth that is in is held up to there by the prey. */
	at_mm?: number;
}

export interface StressAt {
	below_mm: number;
	/** greatest tension in the section: bending less the pressing down the axis; below 0 = all of it is pressed */
	tension_MPa: number;
	bending_MPa: number;
}

export interface BendingStress {
	/** from the tip down */
	along: StressAt[];
	peak: StressAt;
	base: StressAt;
	notes: ValidityNote[];
}

const STEPS = 160;
/** shortest beam, height over base diameter, to which a beam formula is held; common practice, no source */
const LEAST_SLENDER = 2;

/**
 * Stress along a crown for a force at its tip, or `at_mm` below it: cantilever with elliptical section, sigma =
 * F sin(angle) x / Z(x) less F cos(angle) / A(x), x from where the force acts. `steps`: how finely it is looked at. Van Valkenburgh & Ruff 1987, J. Zool. 212: 379-397 (section formulas textbook). Units mm, N, MPa.
 *
 * Solid crown, straight, elastic. The pulp cavity, the enamel's stiffness and the curve are left out. On a truncated cone the
 * peak lies where the diameter is 1.5 times the tip's, not at the base.
 */
export function bendingStress(
	beam: CrownBeam,
	{ force_N, angle_deg, plane, at_mm = 0 }: TipLoad,
	steps = STEPS,
): BendingStress {
	const across = force_N * Math.sin((angle_deg * Math.PI) / 180);
	const down = force_N * Math.cos((angle_deg * Math.PI) / 180);
	const at = (below_mm: number): StressAt => {
		const { length_mm, width_mm } = diametersAt(beam, below_mm);
		const { Z_MD_mm3, Z_LL_mm3, area_mm2 } = ellipseSection(length_mm, width_mm);
		const arm_mm = Math.max(0, below_mm - at_mm);
		const bending_MPa = across === 0 ? 0 : (across * arm_mm) / (plane === 'MD' ? Z_MD_mm3 : Z_LL_mm3);
		return { below_mm, bending_MPa, tension_MPa: bending_MPa - (down === 0 ? 0 : down / area_mm2) };
	};
	const first = beam.stations[0];
	// a plain cone has no section at its very tip
	const top_mm = first.length_mm > 0 ? first.below_mm : beam.height_mm / steps;
	const from = Math.min(Math.max(top_mm, at_mm), beam.height_mm);
	const step = (beam.height_mm - from) / steps;
	const along = Array.from({ length: steps + 1 }, (_, i) => at(from + i * step));
	let best = along.reduce((most, one, i) => (one.tension_MPa > along[most].tension_MPa ? i : most), 0);
	best = Math.min(steps - 1, Math.max(1, best));
	const peak = highest(at, along[best - 1].below_mm, along[best + 1].below_mm);
	const notes: ValidityNote[] = [];
	const base = beam.stations[beam.stations.length - 1];
	const slender = beam.height_mm / (plane === 'MD' ? base.length_mm : base.width_mm);
	if (slender < LEAST_SLENDER) notes.push({ code: 'stubby-beam', limit: LEAST_SLENDER, found: slender });
	return { along, peak, base: along[steps], notes };
}

/** Golden-section search for the greatest tension between two depths. */
function highest(at: (below_mm: number) => StressAt, from: number, to: number): StressAt {
	const golden = (Math.sqrt(5) - 1) / 2;
	let [low, high] = [from, to];
	for (let i = 0; i < 48; i++) {
		const [a, b] = [high - golden * (high - low), low + golden * (high - low)];
		if (at(a).tension_MPa > at(b).tension_MPa) high = b;
		else low = a;
	}
	return [at(from), at((low + high) / 2), at(to)].reduce((best, one) =>
		one.tension_MPa > best.tension_MPa ? one : best,
	);
}
