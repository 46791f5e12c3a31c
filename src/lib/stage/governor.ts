/**
 * Decides what to draw and how well: a state machine without a renderer, on an injected clock.
 *
 * While something moves it watches the time between frames and walks a ladder of steps: down as soon as
 * the median is too long, up only after a long clean run. A step that failed is barred for a while, and for
 * twice as long at each further failure, so that it cannot swing between two steps.
 * When nothing has changed for STILL_ms it asks for one frame at rest quality, then for nothing.
 */
import { STILL_ms } from './thresholds';

export interface Step {
	/** full: level-0 and every term of the shading, antialiased; light: level-1, fewer terms, no antialiasing */
	shading: 'full' | 'light';
	/** canvas pixels per device pixel, along one side */
	scale: number;
}

/** Best first. */
export const LADDER: readonly Step[] = [
	{ shading: 'full', scale: 1 },
	{ shading: 'light', scale: 1 },
	{ shading: 'light', scale: 0.75 },
	{ shading: 'light', scale: 0.6 },
	{ shading: 'light', scale: 0.5 },
	{ shading: 'light', scale: 0.4 },
];

/** A graphics card must keep up with a 60 Hz screen (16.7 ms, and room for a timer's jitter). */
export const CARD_LIMIT_ms = 19;
/** Without one: 33 ms is the promise; a frame that waits for the second screen refresh counts as too long. */
export const SOFTWARE_LIMIT_ms = 28;
/** Without a card a step is only tried upwards when frames come at the screen's own pace. */
export const SOFTWARE_RAISE_ms = 18.5;
/** Frames whose median decides on a step down; two frames of twice the limit decide at once. */
export const LOWER_AFTER_frames = 8;
/** Clean frames before a step up is tried. */
export const RAISE_AFTER_frames = 60;
export const BAR_FIRST_ms = 20_000;
export const BAR_LONGEST_ms = 20 * 60_000;
/** Longer gaps are not frame times: a hidden tab, a stalled page. */
export const GAP_ms = 500;
/** A frame at rest may take this long; with STILL_ms it then stands within 300 ms. */
export const REST_LIMIT_ms = 190;
/** Only so many slow ones in a row count: one may have made shaders or met a busy moment. */
export const REST_LOWER_AFTER_frames = 3;
/** So many in a row within this share of the limit, and a better one is tried: its pixels are fewer than twice as many. */
export const REST_RAISE_AFTER_frames = 4;
export const REST_RAISE_share = 0.62;
export const REST_SCALES: readonly number[] = [1, 0.75, 0.6];
/** Canvas pixels that a processor alone is trusted with at first. */
export const SOFTWARE_START_pixels = 620_000;

/** Frame times that are kept until somebody asks: ten seconds of movement. */
export const MOST_TIMES = 600;

export type Plan = 'moving' | 'rest' | 'wait' | 'none';

export interface GovernorOptions {
	/** true when no graphics card does the drawing */
	software: boolean;
	/** ms, monotonic */
	now: () => number;
	/** canvas pixels at scale 1 when first asked */
	pixels: number;
}

export interface Governor {
	/** Something moved: frames at moving quality until it is still. */
	moved(): void;
	/** Something changed once: one frame, at rest quality if nothing moves. */
	changed(): void;
	/** What this animation tick should do. 'wait': keep ticking, draw nothing. 'none': stop ticking. */
	plan(): Plan;
	/** The planned frame has been handed to the renderer. */
	drawn(plan: 'moving' | 'rest'): void;
	/** A frame at rest quality took this long until it stood, ms. */
	restTook(ms: number): void;
	readonly step: Step;
	readonly rest: Step;
	readonly moving: boolean;
	/** nothing left to draw or to wait for: ticking may stop */
	readonly settled: boolean;
	/** median of the recent moving frames, ms; null before any */
	readonly median_ms: number | null;
	/** Times of the moving frames since this was last asked, ms, at most the last MOST_TIMES. */
	takeTimes(): number[];
	/** how often the step changed, for tests and the status page */
	readonly changes: number;
}

const medianOf = (values: readonly number[]): number => {
	const sorted = [...values].sort((a, b) => a - b);
	const mid = sorted.length >> 1;
	return sorted.length % 2 ? sorted[mid] : (sorted[mid - 1] + sorted[mid]) / 2;
};

export const createGovernor = ({ software, now, pixels }: GovernorOptions): Governor => {
	const limit_ms = software ? SOFTWARE_LIMIT_ms : CARD_LIMIT_ms;
	const raise_ms = software ? SOFTWARE_RAISE_ms : CARD_LIMIT_ms;
	const best = software ? 1 : 0;
	const withinStart = (step: Step) => pixels * step.scale ** 2 <= SOFTWARE_START_pixels;
	const startAt = () => {
		if (!software) return 0;
		const found = LADDER.findIndex((step, i) => i >= best && withinStart(step));
		return found < 0 ? LADDER.length - 1 : found;
	};

	let at = startAt();
	let restAt = 0;
	let slowRests = 0;
	let quickRests = 0;
	let changes = 0;
	let lastMove_ms = -Infinity;
	let moveDirty = false;
	let onceDirty = false;
	let restStands = true;
	/** time of the last moving frame, if the tick before this one drew it */
	let chained_ms: number | null = null;
	/** frames at the present step, newest last */
	let run: number[] = [];
	/** the last moving frames at any step, for the figures */
	let recent: number[] = [];
	/** the same since somebody asked */
	let times: number[] = [];
	const bars = new Map<number, { until_ms: number; length_ms: number }>();

	const go = (to: number) => {
		at = to;
		changes++;
		run = [];
	};

	const judge = () => {
		const tail = run.slice(-LOWER_AFTER_frames);
		const shock = run.length >= 2 && run.slice(-2).every((ms) => ms > 2 * limit_ms);
		if (
			at < LADDER.length - 1 &&
			(shock || (tail.length === LOWER_AFTER_frames && medianOf(tail) > limit_ms))
		) {
			const length_ms = Math.min(BAR_LONGEST_ms, (bars.get(at)?.length_ms ?? BAR_FIRST_ms / 2) * 2);
			bars.set(at, { until_ms: now() + length_ms, length_ms });
			go(at + 1);
		} else if (at > best && run.length >= RAISE_AFTER_frames && medianOf(run) <= raise_ms) {
			if ((bars.get(at - 1)?.until_ms ?? -Infinity) <= now()) go(at - 1);
			else run = [];
		}
	};

	const still = () => now() - lastMove_ms >= STILL_ms;

	return {
		moved() {
			lastMove_ms = now();
			moveDirty = true;
			restStands = false;
		},
		changed() {
			onceDirty = true;
		},
		plan() {
			let plan: Plan = 'none';
			if (!still()) plan = moveDirty || onceDirty ? 'moving' : 'wait';
			else if (onceDirty || moveDirty || !restStands) plan = 'rest';
			if (plan !== 'moving') chained_ms = null;
			return plan;
		},
		drawn(plan) {
			moveDirty = false;
			onceDirty = false;
			if (plan === 'rest') {
				restStands = true;
				return;
			}
			const t = now();
			// a frame at full quality already is the frame at rest
			restStands = LADDER[at].shading === 'full' && REST_SCALES[restAt] <= LADDER[at].scale;
			if (chained_ms !== null && t - chained_ms < GAP_ms) {
				run.push(t - chained_ms);
				if (run.length > RAISE_AFTER_frames) run.shift();
				recent.push(t - chained_ms);
				if (recent.length > 120) recent = recent.slice(-120);
				times.push(t - chained_ms);
				if (times.length > 2 * MOST_TIMES) times = times.slice(-MOST_TIMES);
				judge();
			}
			chained_ms = t;
		},
		restTook(ms) {
			slowRests = ms > REST_LIMIT_ms ? slowRests + 1 : 0;
			quickRests = ms < REST_LIMIT_ms * REST_RAISE_share ? quickRests + 1 : 0;
			let to = restAt;
			if (slowRests >= REST_LOWER_AFTER_frames) to = Math.min(restAt + 1, REST_SCALES.length - 1);
			else if (quickRests >= REST_RAISE_AFTER_frames) to = Math.max(restAt - 1, 0);
			else return;
			restAt = to;
			slowRests = 0;
			quickRests = 0;
		},
		get step() {
			return LADDER[at];
		},
		get rest(): Step {
			return { shading: 'full', scale: REST_SCALES[restAt] };
		},
		get settled() {
			return still() && restStands && !moveDirty && !onceDirty;
		},
		get moving() {
			return !still();
		},
		get median_ms() {
			return recent.length ? medianOf(recent) : null;
		},
		takeTimes() {
			const taken = times.slice(-MOST_TIMES);
			times = [];
			return taken;
		},
		get changes() {
			return changes;
		},
	};
};
