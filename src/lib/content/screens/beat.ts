/** What a gallery's screen tells the server of itself every half a minute. Nothing in it is about a person. */
export interface ScreenBeat {
	/** name of the screen; null where nobody gave it one */
	name: string | null;
	/** random id of this load of the page */
	page: string;
	uptime_s: number;
	state: ScreenDoes;
	/** behind another tab or window: its timers are slow */
	hidden: boolean;
	/** last word of a page that goes away */
	leaving: boolean;
	/** somebody touched within so many minutes (see TOUCHED_min); null = longer ago or never */
	touched_min: number | null;
	/** `start`, a room's id, or `other` */
	room: string;
	/** hash of the exhibit on screen */
	exhibit: string | null;
	/** of the program */
	version: string;
	/** moving frames since the last beat; null where there were none */
	frames: FrameSummary | null;
	/** render scale, 1 = one sample per pixel; null before the stage is there */
	quality: number | null;
	/** JavaScript heap; null where the browser does not tell */
	heap_MB: number | null;
	geometries: number;
	textures: number;
	contexts: number;
	/** how often WebGL went away since the page was loaded */
	losses: number;
	errors: { count: number; last: string | null };
}

export interface FrameSummary {
	count: number;
	median_ms: number;
	p95_ms: number;
}

/** awake: somebody is here; dim and dark: after hours; the others as in kiosk/idle */
export const SCREEN_DOES = ['awake', 'asking', 'clearing', 'resting', 'dim', 'dark'] as const;
export type ScreenDoes = (typeof SCREEN_DOES)[number];

/** The last touch is told this coarsely, minutes. */
export const TOUCHED_min = [1, 5, 15, 60, 240] as const;

/** Seconds between two beats. */
export const BEAT_EVERY_s = 30;
