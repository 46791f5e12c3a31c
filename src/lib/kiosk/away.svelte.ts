export interface AwayTools {
	/** whether the server, or whatever answers for it, is there */
	there: () => Promise<boolean>;
	/** calls again and again until stopped */
	every: (period_ms: number, call: () => void) => () => void;
}

const TRY_EVERY_ms = 1_000;

/** Where a visitor wanted to go while the server was away: the page stays, says so, and goes on as soon as it can. */
export class Away {
	/** somebody waits for a page */
	waiting = $state(false);
	#tools: AwayTools;
	#turn = 0;
	#stop: (() => void) | null = null;

	constructor(tools: AwayTools) {
		this.#tools = tools;
	}

	/** Goes where the visitor wanted to, at once or when the server is back. A later wish replaces an earlier one. */
	async go(how: () => void): Promise<void> {
		this.stay();
		const turn = this.#turn;
		if (await this.#tools.there()) {
			if (turn === this.#turn) how();
			return;
		}
		if (turn !== this.#turn) return;
		this.waiting = true;
		let asking = false;
		this.#stop = this.#tools.every(TRY_EVERY_ms, () => {
			if (asking) return;
			asking = true;
			void this.#tools.there().then((there) => {
				asking = false;
				if (!there || turn !== this.#turn) return;
				this.stay();
				how();
			});
		});
	}

	/** The visitor would rather stay. */
	stay(): void {
		this.#turn += 1;
		this.#stop?.();
		this.#stop = null;
		this.waiting = false;
	}
}
