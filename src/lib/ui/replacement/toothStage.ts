import { CYCLE_SHARES } from '../../domain/replacement/cycleShares';
import { exposedAt } from '../../domain/replacement/jawSnapshot';

/** What one position of a drawn jaw shows at a phase; lengths as shares of a full crown's height. */
export interface DrawnTooth {
	/** crown that stands out of the gum, wear left out; 0 where the place is empty */
	crown: number;
	/** share of the crown's tip that is worn away */
	worn: number;
	/** root in the jaw */
	root: number;
	/** crown of the next tooth in the jaw, and how far its tip still lies above the gum line */
	next: number;
	nextDepth: number;
	/** the crown that has just been shed: how far it has fallen, 0 .. 1; null when none falls */
	falling: number | null;
	/** how far a loose crown leans, 0 .. 1 */
	leans: number;
}

const ROOT_UNTIL = 0.4;
const EATEN_FROM = 0.5;
const NEXT_FROM = 0.38;
const FALLS_FOR = 0.09;
const FULL_ROOT = 0.8;
/** most that wear takes off a crown */
export const MOST_WORN = 0.18;

const ease = (from: number, to: number, at: number): number => {
	const share = Math.min(1, Math.max(0, (at - from) / (to - from)));
	return share * share * (3 - 2 * share);
};

/** `phase` 0 = just erupted, towards 1 = the next erupts. Sizes are an illustration: only the order of events is known. */
export function toothStage(phase: number): DrawnTooth {
	const { erupting, loosening, empty } = CYCLE_SHARES;
	const falls = 1 - empty;
	const fallen = (phase - falls) / FALLS_FOR;
	return {
		crown: exposedAt(phase),
		worn: MOST_WORN * Math.min(1, Math.max(0, (phase - erupting) / (falls - erupting))),
		root:
			phase < falls
				? FULL_ROOT * ease(-0.05, ROOT_UNTIL, phase) * (1 - 0.95 * ease(EATEN_FROM, falls, phase))
				: 0,
		next: ease(NEXT_FROM, 0.97, phase),
		nextDepth: 0.95 * (1 - ease(NEXT_FROM, 1, phase)),
		falling: fallen >= 0 && fallen < 1 ? fallen : null,
		leans: ease(falls - loosening * 0.6, falls, phase),
	};
}
