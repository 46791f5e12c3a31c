/** Asks a worker one thing at a time: what is asked while it works waits, and only the newest of that is done. */
export class Asker<Ask extends object, Answer> {
	#worker: Worker | null = null;
	#make: () => Worker;
	#id = 0;
	#busy: { id: number; done: (answer: Answer | null) => void } | null = null;
	#waiting: { ask: Ask; done: (answer: Answer | null) => void } | null = null;

	/** The worker answers `{ id, answer }` to `{ id, ...ask }`. It is made with the first question. */
	constructor(make: () => Worker) {
		this.#make = make;
	}

	/** Resolves with null when something newer was asked meanwhile. */
	ask(ask: Ask): Promise<Answer | null> {
		return new Promise((done) => {
			this.#waiting?.done(null);
			this.#waiting = { ask, done };
			this.#next();
		});
	}

	close(): void {
		this.#worker?.terminate();
		this.#worker = null;
		this.#busy?.done(null);
		this.#waiting?.done(null);
		this.#busy = this.#waiting = null;
	}

	#next(): void {
		if (this.#busy || !this.#waiting) return;
		if (!this.#worker) {
			this.#worker = this.#make();
			this.#worker.addEventListener(
				'message',
				({ data }: MessageEvent<{ id: number; answer: Answer | null }>) => {
					if (data.id !== this.#busy?.id) return;
					const { done } = this.#busy;
					this.#busy = null;
					done(data.answer);
					this.#next();
				},
			);
		}
		const { ask, done } = this.#waiting;
		this.#waiting = null;
		this.#busy = { id: ++this.#id, done };
		this.#worker.postMessage({ id: this.#id, ...ask });
	}
}
