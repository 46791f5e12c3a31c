/**
 * The gallery's six stages of a tooth's life. They are OURS: no published scheme for reptiles at large was found
 * (the sequence follows Poole 1961, doi:10.1111/j.1469-7998.1961.tb06083.x).
 * 0 germ, 1 crown forming, 2 in a pit of the old root, 3 old root mostly gone, 4 erupting, 5 in use.
 */
export const LIFE_STAGES = ['germ', 'crown', 'pit', 'loose', 'erupting', 'in-use'] as const;
export type LifeStageName = (typeof LIFE_STAGES)[number];
export type LifeStage = 0 | 1 | 2 | 3 | 4 | 5;

/** Where each stage begins within the time below the gum, and where eruption ends within the time above it. */
export const STAGE_STARTS = { crown: 0.15, pit: 0.45, loose: 0.85, erupted: 0.25 } as const;

/**
 * Stage at a time of a tooth's life, u = 0 .. 1, first germ to shedding. A tooth erupts when its predecessor falls,
 * at u = 1 - share, where `share` is the period over the length of a life: one half when one successor grows at a
 * time, a third when two do.
 */
export function lifeStage(u: number, share = 0.5): LifeStage {
	const { below, above } = lifeTimes(u, share);
	if (above > 0 || u >= 1 - share) return above < STAGE_STARTS.erupted ? 4 : 5;
	if (below < STAGE_STARTS.crown) return 0;
	if (below < STAGE_STARTS.pit) return 1;
	return below < STAGE_STARTS.loose ? 2 : 3;
}

/** Part of the time below the gum and of the time above it that has passed, each 0 .. 1. */
export function lifeTimes(u: number, share = 0.5): { below: number; above: number } {
	const within = (value: number) => Math.min(1, Math.max(0, value));
	return { below: within(u / (1 - share)), above: within((u - (1 - share)) / share) };
}
