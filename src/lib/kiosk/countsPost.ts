/** One sending of counts: its random name makes sending it again harmless. */
export interface CountsBatch {
	batch: string;
	body: object;
}

/** So many sendings wait for a server that is away; the oldest go first where there are more. */
export const MOST_WAITING = 300;

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

	/** Everything that is not confirmed, as it would be sent: for a page that goes and cannot wait for an answer. */
	get bodies(): string[] {
		return this.#waiting.map(written);
	}

	add(body: object, batch: string): void {
		this.#waiting.push({ batch, body });
		if (this.#waiting.length > MOST_WAITING) this.#waiting.shift();
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
			const [next] = this.#waiting;
			const status = await this.#send(written(next)).catch(() => 0);
			// taken, or never to be taken as it is; it may have had to make room meanwhile
			if ((status >= 200 && status < 300) || (status >= 400 && status < 500 && status !== 429))
				this.#waiting = this.#waiting.filter((one) => one !== next);
			else {
				wait_ms = 5000;
				break;
			}
		}
		this.#busy = false;
		if (wait_ms > 0) this.#timer = setTimeout(() => void this.#work(), wait_ms);
	}
}

const written = ({ batch, body }: CountsBatch): string => JSON.stringify({ batch, ...body });

/** Hands counts to the server at this path; the answer's status. The request outlives its page. */
export const sendCounts =
	(path: string) =>
	async (body: string): Promise<number> => {
		const headers = { 'content-type': 'application/json' };
		const answer = await fetch(path, { method: 'POST', body, headers, keepalive: true });
		return answer.status;
	};
