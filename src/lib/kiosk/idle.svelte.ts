import { createContext } from 'svelte';

/**
 * awake    somebody is here, or was a moment ago
 * asking   nobody has touched for long: "Still there?" with the seconds that are left
 * clearing nobody answered: everything goes back, or waits for the server to be able to
 * resting  all is as at the start and nobody is here: the attract loop may run
 */
export type IdleState = 'awake' | 'asking' | 'clearing' | 'resting';

export interface IdleTimes {
	warnAfter_s: number;
	resetAfterWarning_s: number;
}

export interface IdleTools {
	times: () => IdleTimes;
	/** monotonic, ms; jumps are borne */
	now: () => number;
	/** calls again and again until stopped */
	every: (period_ms: number, call: () => void) => () => void;
	/** nothing would be taken from anybody: the start screen with everything as usual */
	atStart: () => boolean;
	/** something goes on that needs no touch, as words being read aloud */
	busy: () => boolean;
	/** Puts everything back to the start; false where that cannot be done now. */
	clear: () => Promise<boolean>;
}

const TICK_ms = 250;
/** A gap between two ticks counts for no more: the machine slept, the page was hidden, or a clock was set. */
const MOST_STEP_ms = 2_000;
/** WCAG 2.2, 2.2.1: a warning leaves at least 20 s. */
const LEAST_WARNING_s = 20;
/** On a start screen where nothing would be lost, the loop need not wait for a slow reader of the longest label. */
const REST_AFTER_s = 40;
/** No label is read aloud for longer: a voice that never says that it has ended does not keep the screen from clearing. */
const MOST_BUSY_s = 600;
/** Between two tries to go back to the start. */
const RETRY_AFTER_s = 5;

/**
 * Notices that nobody is here any more. Time is added up in small steps and only while the page is seen, so that
 * neither sleep nor a clock that jumps ends anybody's visit.
 */
export class Idle {
	state = $state<IdleState>('awake');
	/** after hours and nobody here: the screen is black, and nothing is drawn behind it */
	dark = $state(false);
	/** whole seconds until everything goes back, while asking */
	left_s = $state(0);
	/** quiet time in this state, ms */
	#quiet_ms = 0;
	#last_ms = 0;
	/** for how long something has gone on without a touch, ms */
	#busy_ms = 0;
	#hidden = false;
	#clearing = false;
	#holds = new Map<symbol, number>();
	#tools: IdleTools;

	constructor(tools: IdleTools) {
		this.#tools = tools;
	}

	/** Begins to watch; returns what ends it. */
	watch(): () => void {
		this.#to('awake');
		this.#last_ms = this.#tools.now();
		const stop = this.#tools.every(TICK_ms, () => this.#tick());
		return () => {
			stop();
			this.#to('awake');
		};
	}

	/**
	 * A finger or key: the time begins anew. While asking it does so too, but only `stay` ends the question, and while
	 * resting only `stay` wakes, so that the touch still finds under it what it was meant for.
	 */
	touched(): void {
		if (this.state === 'clearing') this.#to('awake');
		this.#quiet_ms = 0;
		this.#busy_ms = 0;
		if (this.state === 'asking') this.#count();
	}

	/** Somebody is here: ends the question, or the rest. As often as wanted. */
	stay(): void {
		this.#to('awake');
	}

	/** The page is hidden, or seen again: whoever made it seen is here. */
	hide(hidden: boolean): void {
		this.#hidden = hidden;
		this.#last_ms = this.#tools.now();
		if (!hidden) this.touched();
	}

	/** As long as this holds, nothing is asked before so many seconds: a class thinks longer. Returns what ends it. */
	hold(warnAfter_s: number): () => void {
		const key = Symbol('hold');
		this.#holds.set(key, warnAfter_s);
		return () => {
			// what was thought over until now is not held against anybody
			if (this.#holds.delete(key)) this.touched();
		};
	}

	get #warnAfter_s(): number {
		return Math.max(this.#tools.times().warnAfter_s, ...this.#holds.values());
	}
	get #warning_s(): number {
		return Math.max(LEAST_WARNING_s, this.#tools.times().resetAfterWarning_s);
	}

	#to(state: IdleState): void {
		this.state = state;
		this.#quiet_ms = 0;
		if (state === 'asking') this.#count();
	}

	#count(): void {
		this.left_s = Math.max(0, Math.ceil(this.#warning_s - this.#quiet_ms / 1000));
	}

	#tick(): void {
		const now = this.#tools.now();
		const step = Math.min(MOST_STEP_ms, Math.max(0, now - this.#last_ms));
		this.#last_ms = now;
		if (this.#hidden || this.#clearing) return;
		this.#quiet_ms += step;
		const quiet_s = this.#quiet_ms / 1000;
		if (this.state === 'awake') {
			this.#busy_ms = this.#tools.busy() ? this.#busy_ms + step : 0;
			if (this.#busy_ms > 0 && this.#busy_ms < MOST_BUSY_s * 1000) this.#quiet_ms = 0;
			else if (this.#tools.atStart()) {
				if (quiet_s >= Math.min(REST_AFTER_s, this.#warnAfter_s)) this.#to('resting');
			} else if (quiet_s >= this.#warnAfter_s) this.#to('asking');
		} else if (this.state === 'asking') {
			this.#count();
			if (this.left_s === 0) void this.#clear();
		} else if (this.state === 'clearing' && quiet_s >= RETRY_AFTER_s) void this.#clear();
		// somebody at a keyboard or another page of ours may have left the start screen
		else if (this.state === 'resting' && !this.#tools.atStart()) this.#to('awake');
	}

	async #clear(): Promise<void> {
		this.#to('clearing');
		this.#clearing = true;
		const cleared = await this.#tools.clear().catch(() => false);
		this.#clearing = false;
		// touched meanwhile: somebody is here, and finds the start screen or the room
		if (this.state !== 'clearing') return;
		if (cleared) this.#to(this.#tools.atStart() ? 'resting' : 'awake');
		else this.#quiet_ms = 0;
	}
}

export const [getIdle, setIdle] = createContext<Idle>();
