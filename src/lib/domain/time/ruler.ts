import { CHART_OLDEST_MA, STAGES, type Stage } from './stages';

/** The ruler's usual beginning, millions of years ago. */
export const RULER_START_MA = 100;
/** A ruler that must show older rocks begins at the next whole multiple of this. */
const RULER_STEP_MA = 50;

/** Where the ruler begins so that every span fits on it, as far as the chart reaches; millions of years ago. */
export function rulerStart(oldest_Ma: readonly number[]): number {
	const known = oldest_Ma.filter((age) => Number.isFinite(age) && age <= CHART_OLDEST_MA);
	const oldest = Math.max(RULER_START_MA, ...known);
	return oldest > RULER_START_MA ? Math.ceil(oldest / RULER_STEP_MA) * RULER_STEP_MA : RULER_START_MA;
}

/**
 * Place on the ruler: 0 at its beginning, 1 today. The scale is even: ten million years are the same length
 * everywhere. Clamped to the ruler; NaN for what is not an age.
 */
export function rulerPosition(age_Ma: number, start_Ma: number = RULER_START_MA): number {
	if (!(age_Ma >= 0) || !(start_Ma > 0)) return NaN;
	return 1 - Math.min(age_Ma, start_Ma) / start_Ma;
}

export interface RulerBar {
	/** left and right end, 0 to 1 */
	from: number;
	to: number;
	/** true when the span begins before the ruler does, so that its bar is cut off */
	cutOff: boolean;
}

/** A span of time as a bar on the ruler; null when it ends before the ruler begins, or is no span. */
export function rulerBar(
	oldest_Ma: number,
	youngest_Ma: number,
	start_Ma: number = RULER_START_MA,
): RulerBar | null {
	if (!(oldest_Ma >= youngest_Ma) || !(youngest_Ma >= 0) || youngest_Ma >= start_Ma) return null;
	return {
		from: rulerPosition(oldest_Ma, start_Ma),
		to: rulerPosition(youngest_Ma, start_Ma),
		cutOff: oldest_Ma > start_Ma,
	};
}

export interface RulerAge {
	stage: Stage;
	from: number;
	to: number;
}

/** The named ages on the ruler, oldest first; the first may be cut off at the ruler's beginning. */
export function rulerAges(start_Ma: number = RULER_START_MA): RulerAge[] {
	return STAGES.filter(({ top_Ma }) => top_Ma < start_Ma).map((stage) => ({
		stage,
		from: rulerPosition(stage.base_Ma, start_Ma),
		to: rulerPosition(stage.top_Ma, start_Ma),
	}));
}

/** Round ages for the ruler's numbers, oldest first, today (0) last; millions of years ago. */
export function rulerTicks(start_Ma: number = RULER_START_MA): number[] {
	const step = start_Ma > 150 ? 50 : 20;
	const count = Math.floor(start_Ma / step + 1e-9);
	return Array.from({ length: count + 1 }, (_, i) => (count - i) * step);
}
