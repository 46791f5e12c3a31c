/** No word from the page for so long: it stands still. */
export const HUNG_AFTER_ms = 15_000;
/** While it stands still it is told again so often. */
const AGAIN_AFTER_ms = 30_000;
/** How often the page says that it runs. */
export const PING_EVERY_ms = 3_000;
/** How often the watcher looks. */
export const LOOK_EVERY_ms = 1_000;
/** A gap between two looks counts for no more: the machine slept. */
const MOST_STEP_ms = 2_000;

/** Notices that a page no longer says anything. It runs beside the page, in a worker, which goes on when the page cannot. */
export class PageWatch {
	#silent_ms = 0;
	#last_ms: number;
	#paused = false;
	#hung = false;

	constructor(now_ms: number) {
		this.#last_ms = now_ms;
	}

	/** A word from the page. */
	heard(): void {
		this.#silent_ms = 0;
		this.#hung = false;
	}

	/** A hidden page may be silent. */
	pause(paused: boolean): void {
		this.#paused = paused;
		this.heard();
	}

	/** True when the server should be told now that the page stands still. */
	look(now_ms: number): boolean {
		const step = Math.min(MOST_STEP_ms, Math.max(0, now_ms - this.#last_ms));
		this.#last_ms = now_ms;
		if (this.#paused) return false;
		this.#silent_ms += step;
		if (this.#silent_ms < (this.#hung ? AGAIN_AFTER_ms : HUNG_AFTER_ms)) return false;
		this.#silent_ms = 0;
		this.#hung = true;
		return true;
	}
}
