import type { ScreenBeat } from '../../content/screens/beat';
import { BEAT_EVERY_s } from '../../content/screens/beat';
import type { ScreenHere } from '../../content/screens/shownOn';
import type { IdleState } from '../idle.svelte';
import { dayPlan, type DayPlan } from './dayPlan';
import { reloadReason } from './reloadReason';
import { touchedWithin } from './touchedWithin';

/** A finger on the glass is not interrupted; then the order to restart holds. */
const QUIET_BEFORE_RESTART_ms = 15_000;
const LONGEST_WAIT_ms = 60_000;
const RETRY_RELOAD_ms = 60_000;
const TICK_ms = 1_000;
/** A gap between two ticks that no busy moment makes. */
const STOOD_STILL_ms = 8_000;
const LONGEST_ERROR = 200;

type Figures = Omit<
	ScreenBeat,
	'name' | 'uptime_s' | 'state' | 'hidden' | 'leaving' | 'touched_min' | 'errors'
>;

export interface CareTools {
	here: () => ScreenHere;
	idle: () => IdleState;
	/** nothing would be taken from anybody: the start screen as it was at first */
	atStart: () => boolean;
	/** monotonic, ms; 0 = when the page was loaded */
	now: () => number;
	/** on the wall; may jump */
	clock: () => Date;
	every: (period_ms: number, call: () => void) => () => void;
	/** minutes, one for this page */
	jitter_min: number;
	/** what the page and its stage say of themselves */
	figures: () => Figures;
	/** how often WebGL went away since the page was loaded */
	losses: () => number;
	send: (beat: ScreenBeat, last: boolean) => void;
	/** Loads the page anew; false where it cannot, because the server is away. */
	reload: () => Promise<boolean>;
}

/**
 * Looks after a gallery's screen that nobody looks after: says how it is, grows dark after hours, loads the page anew
 * at night, when it is told to, and when its graphics keep failing. Nothing of it draws, or runs more than once a second.
 */
export class Caretaker {
	/** what the clock asks for */
	plan = $state<DayPlan>('lit');
	/** black now: after hours, and nobody there */
	dark = $state(false);
	#tools: CareTools;
	#touched_ms: number | null = null;
	#nextBeat_ms = 0;
	#lastTick_ms = 0;
	#hidden = false;
	#ordered_ms: number | null = null;
	#reloading = false;
	#retry_ms = -Infinity;
	#errors = 0;
	#lastError: string | null = null;

	constructor(tools: CareTools) {
		this.#tools = tools;
	}

	/** Begins to care; returns what ends it. */
	watch(): () => void {
		this.#nextBeat_ms = this.#tools.now();
		this.#lastTick_ms = this.#tools.now();
		this.#tick();
		const stop = this.#tools.every(TICK_ms, () => this.#tick());
		return () => {
			stop();
			this.dark = false;
			this.plan = 'lit';
		};
	}

	touched(): void {
		this.#touched_ms = this.#tools.now();
		this.dark = false;
	}

	hide(hidden: boolean): void {
		this.#hidden = hidden;
		this.#beat(false);
	}

	/** The page goes away. */
	leave(): void {
		this.#beat(true);
	}

	/** A fault of the page; only what the program itself says of it is kept. */
	failed(message: string): void {
		this.#errors++;
		this.#lastError = message.replace(/\?[^\s)]*/g, '').slice(0, LONGEST_ERROR);
	}

	/** The server wants the page loaded anew: as soon as no finger is on it. */
	restart(): void {
		this.#ordered_ms ??= this.#tools.now();
		this.#tick();
	}

	get #sinceTouch_ms(): number {
		return this.#touched_ms === null ? Infinity : this.#tools.now() - this.#touched_ms;
	}

	#tick(): void {
		const now = this.#tools.now();
		const { hours, reloadAt_min, staysLit_min } = this.#tools.here();
		this.plan = dayPlan(hours, this.#tools.clock());
		const idle = this.#tools.idle();
		// a page that was loaded at night and never touched need not wait until its idle time has passed
		const nobody = idle === 'resting' || (this.#touched_ms === null && this.#tools.atStart());
		this.dark = this.plan === 'dark' && nobody && this.#sinceTouch_ms >= staysLit_min * 60_000;
		// back from standing still, or from sleep: whoever was told so hears at once that it is over
		const stood = now - this.#lastTick_ms > STOOD_STILL_ms;
		this.#lastTick_ms = now;
		if (stood || now >= this.#nextBeat_ms) this.#beat(false);

		const ordered =
			this.#ordered_ms !== null &&
			(this.#sinceTouch_ms >= QUIET_BEFORE_RESTART_ms || now - this.#ordered_ms >= LONGEST_WAIT_ms);
		const age = { uptime_ms: now, clock: this.#tools.clock(), reloadAt_min };
		const { jitter_min } = this.#tools;
		const losses = this.#tools.losses();
		if (ordered || (nobody && reloadReason({ ...age, jitter_min, losses }) !== null)) void this.#reload();
	}

	#beat(leaving: boolean): void {
		const now = this.#tools.now();
		this.#nextBeat_ms = now + BEAT_EVERY_s * 1000;
		const idle = this.#tools.idle();
		this.#tools.send(
			{
				name: this.#tools.here().name,
				...this.#tools.figures(),
				uptime_s: Math.round(now / 1000),
				state: this.dark ? 'dark' : idle === 'resting' && this.plan === 'dim' ? 'dim' : idle,
				hidden: this.#hidden,
				leaving,
				touched_min: touchedWithin(this.#sinceTouch_ms),
				errors: { count: this.#errors, last: this.#lastError },
			},
			leaving,
		);
	}

	async #reload(): Promise<void> {
		const now = this.#tools.now();
		if (this.#reloading || now - this.#retry_ms < RETRY_RELOAD_ms) return;
		this.#reloading = true;
		this.#retry_ms = now;
		await this.#tools.reload().catch(() => false);
		this.#reloading = false;
	}
}
