/** Moves a place along a length as time passes; also by hand and by steps. It never starts by itself. */
export class Player {
	/** where it stands, 0 .. length, in the length's own unit */
	at = $state(0);
	playing = $state(false);
	#length: () => number;
	#perSecond: () => number;
	#frame = 0;

	/** `length` and `perSecond` are asked anew all the time; both in one unit, `perSecond` per second of watching. */
	constructor(length: () => number, perSecond: () => number) {
		this.#length = length;
		this.#perSecond = perSecond;
	}

	get length(): number {
		return this.#length();
	}

	/** Goes there and stops; beyond an end it stays at the end. */
	to(place: number): void {
		this.pause();
		this.at = Math.min(this.length, Math.max(0, place));
	}

	toggle(): void {
		if (this.playing) this.pause();
		else this.#play();
	}

	pause(): void {
		this.playing = false;
		cancelAnimationFrame(this.#frame);
	}

	#play(): void {
		if (this.at >= this.length) this.at = 0;
		this.playing = true;
		let last = performance.now();
		const step = (now: number) => {
			if (!this.playing) return;
			// a page that was hidden goes on where it stopped
			const passed_s = Math.min(0.1, (now - last) / 1000);
			last = now;
			this.at = Math.min(this.length, this.at + passed_s * this.#perSecond());
			if (this.at >= this.length) this.playing = false;
			else this.#frame = requestAnimationFrame(step);
		};
		this.#frame = requestAnimationFrame(step);
	}
}
