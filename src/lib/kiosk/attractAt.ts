/** One question in one language stands so long, s; the teeth turn through the first part of it and rest in the other. */
export const STEP_s = 8;
/** Below 5 s: what moves by itself beside text comes to rest (WCAG 2.2, 2.2.2). */
const TURN_s = 4.8;
/** a whole turn in three steps; at most 38 degrees a second, which tires nobody */
const TURN_deg = 120;

/** The lamp swings low from side to side, so that ridges and edges come out. */
const LAMP = { from_deg: 275, to_deg: 325, elevation_deg: 36 };

/** Where what is bright stands, in hundredths of the screen from its place: no two steps in a row alike. */
const SHIFTS: readonly (readonly [number, number])[] = [
	[0, 0],
	[3, 2],
	[-2, 4],
	[2, -2],
	[-3, 1],
	[1, 3],
	[-1, -1],
];

export interface AttractState {
	/** steps since the loop began */
	step: number;
	/** which question and which teeth: goes up when all languages have had their turn */
	scene: number;
	/** index of the language that asks */
	language: number;
	/** degrees that the teeth have turned since the loop began */
	yaw_deg: number;
	lamp: { azimuth_deg: number; elevation_deg: number };
	/** the teeth turn; else nothing has to be drawn before the next step */
	turning: boolean;
	/** s until the next step */
	left_s: number;
	/** shift of everything bright: hundredths of the width and of the height */
	shift: readonly [number, number];
}

/** The attract loop at a time since it began, s; `languages` >= 1. Any time is allowed: a sleep or jump only skips. */
export function attractAt(t_s: number, languages: number): AttractState {
	const t = Math.max(0, t_s);
	const step = Math.floor(t / STEP_s);
	const within_s = t - step * STEP_s;
	const done = smooth(Math.min(1, within_s / TURN_s));
	const swing = step % 2 === 0 ? done : 1 - done;
	return {
		step,
		scene: Math.floor(step / languages),
		language: step % languages,
		yaw_deg: (step + done) * TURN_deg,
		lamp: {
			azimuth_deg: LAMP.from_deg + swing * (LAMP.to_deg - LAMP.from_deg),
			elevation_deg: LAMP.elevation_deg,
		},
		turning: within_s < TURN_s,
		left_s: STEP_s - within_s,
		shift: SHIFTS[step % SHIFTS.length],
	};
}

/** Eases in and out, 0 .. 1. */
const smooth = (x: number): number => x * x * (3 - 2 * x);

/** The two of `count` teeth that a scene shows, as indices; fewer where there are fewer. */
export function pairAt(scene: number, count: number): number[] {
	if (count <= 0) return [];
	if (count === 1) return [0];
	const first = (2 * scene) % count;
	// the row is ordered as the drawer is: a tooth some places on is of another kind
	const apart = 1 + ((2 + scene) % (count - 1));
	return [first, (first + apart) % count];
}
