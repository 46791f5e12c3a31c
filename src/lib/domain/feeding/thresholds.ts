/**
 * Numbers that lead from a tooth's traits to its place in the triangle. All are teaching bands of this museum, not
 * published limits: no numeric limit of the guilds was to be read. They come from content/feeding/thresholds.yaml.
 *
 * A trait pulls by `pull` for each step of its own scale away from `middle`, where it says nothing.
 */
export interface Thresholds {
	/** height over the longer base diameter; scale: natural logarithm; slender to pierce, stout to crush */
	slenderness: { middle: number; pull: number };
	/** tip radius over the base's mean radius; natural logarithm; blunt to crush, sharp away from it */
	tip: { middle: number; pull: number };
	/** shorter over longer base diameter; natural logarithm; thin to cut */
	roundness: { middle: number; pull: number };
	/** edge score (see evidence.ts), linear; strong edges to cut, none away from it */
	edges: { middle: number; pull: number; fullShare: number; serrated: number };
	/** what a lens or three-edged section adds towards cut */
	section: { pull: number };
	/** degrees over `step_deg`; bent away from crush */
	curve: { middle_deg: number; step_deg: number; pull: number };
	/** share of the crown that hard food has worn, 0 .. 1; towards crush */
	wear: { pull: number };
	/** how uncertain a reading is where nothing can be read at all, on each scale */
	unknown: {
		slenderness: number;
		tip: number;
		roundness: number;
		edges: number;
		section: number;
		curve: number;
		wear: number;
	};
	/** how uncertain measured readings are, on the same scales: teeth of one animal differ by about this much */
	spread: {
		slenderness: number;
		tip: number;
		roundness: number;
		edges: number;
		section: number;
		curve: number;
		wear: number;
	};
	/** share of the round tip's force that a tip with two strong edges needs in skin */
	edgedShare: number;
	/** between the bite's force and the crown's axis when prey struggles, degrees */
	sidePull_deg: number;
	/** prey length over crown height, low and high */
	preyOverTooth: readonly [low: number, high: number];
}
