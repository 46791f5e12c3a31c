/** A press that pushes a tooth in: pressed and held it goes on, let go it stops where it is. */
const PUSH_ms = 3200;

export class BitePress {
	/** how far it has gone, 0 at the surface .. 1 as far as it goes */
	share = $state(0);
	pressing = $state(false);
	#limit = 1;
	#last = 0;
	#frame = 0;
	#atOnce: () => boolean;

	/** `atOnce`: whether motion is unwanted, so that the press goes straight to its end */
	constructor(atOnce: () => boolean) {
		this.#atOnce = atOnce;
	}

	/** whether it can go no further */
	get done(): boolean {
		return this.share >= this.#limit - 1e-9;
	}

	/** Begins, or goes on; from the start once it is done. `limit`: where it ends, 0 .. 1. */
	start(limit = 1): void {
		this.#limit = limit;
		if (this.pressing) return;
		if (this.done) this.share = 0;
		if (this.#atOnce()) {
			this.share = limit;
			return;
		}
		this.pressing = true;
		this.#last = performance.now();
		this.#frame = requestAnimationFrame(this.#step);
	}

	stop(): void {
		this.pressing = false;
		cancelAnimationFrame(this.#frame);
	}

	/** Pulls the tooth out again. */
	reset(): void {
		this.stop();
		this.share = 0;
	}

	#step = (): void => {
		const now = performance.now();
		this.share = Math.min(this.#limit, this.share + Math.min(120, now - this.#last) / PUSH_ms);
		this.#last = now;
		if (this.done) this.stop();
		else if (this.pressing) this.#frame = requestAnimationFrame(this.#step);
	};
}
