/** One sending of counts: its random name makes sending it again harmless. */
export interface CountsBatch {
	batch: string;
	body: object;
}

/** Keeps sendings until they are confirmed, and tries again. Nothing is stored: what the page forgets is lost. */
export class CountsPost {
	#waiting: CountsBatch[] = [];
	#busy = false;
	#timer: ReturnType<typeof setTimeout> | null = null;
	#send: (body: string) => Promise<number>;

	/** `send` gives the answer's status, or throws when nobody answers. */
	constructor(send: (body: string) => Promise<number>) {
		this.#send = send;
	}

	get waiting(): number {
		return this.#waiting.length;
	}

	add(body: object, batch: string): void {
		this.#waiting.push({ batch, body });
		// where nobody answered, the next try comes by itself
		if (!this.#timer) void this.#work();
	}

	/** Ends trying again. */
	stop(): void {
		if (this.#timer) clearTimeout(this.#timer);
		this.#timer = null;
	}

	async #work(): Promise<void> {
		this.#timer = null;
		if (this.#busy) return;
		this.#busy = true;
		let wait_ms = 0;
		while (this.#waiting.length > 0) {
			const [{ batch, body }] = this.#waiting;
			const status = await this.#send(JSON.stringify({ batch, ...body })).catch(() => 0);
			// taken, or never to be taken as it is
			if ((status >= 200 && status < 300) || (status >= 400 && status < 500 && status !== 429))
				this.#waiting.shift();
			else {
				wait_ms = 5000;
				break;
			}
		}
		this.#busy = false;
		if (wait_ms > 0) this.#timer = setTimeout(() => void this.#work(), wait_ms);
	}
}
