import type { ExhibitStore } from './exhibitStore';

export const PING_EVERY_MS = 15_000;

/** What an open screen is told. */
export interface LiveNews {
	/** of the exhibit */
	hash: string;
	/** version of the program */
	code: string;
	/** hashes of the shapes that the exhibit now has: what a visitor holds may not be among them any more */
	shapes: string[];
}

/**
 * Server-sent events about the exhibit: event `exhibit` with `LiveNews` at once and at each change,
 * and a comment every 15 s so that both ends notice a dead connection. Everything is let go when the
 * reader goes away; the stream ends when the store closes. `orders` hands over what makes the reader load its page
 * anew (event `restart`), and takes what ends that.
 */
export function eventStream(
	store: Pick<ExhibitStore, 'current' | 'subscribe' | 'closing'>,
	code: string,
	pingEvery_ms: number = PING_EVERY_MS,
	orders: (restart: () => void) => () => void = () => () => undefined,
): ReadableStream<Uint8Array> {
	const encoder = new TextEncoder();
	let stop = (): void => undefined;
	return new ReadableStream<Uint8Array>({
		start(controller) {
			const send = (text: string): void => {
				try {
					controller.enqueue(encoder.encode(text));
				} catch {
					stop(); // the reader has gone
				}
			};
			const sendNews = (): void => {
				const exhibit = store.current();
				if (!exhibit) return;
				const shapes = [...new Set(exhibit.specimens.map(({ prepared }) => prepared.hash))];
				const news: LiveNews = { hash: exhibit.hash, code, shapes };
				send(`event: exhibit\ndata: ${JSON.stringify(news)}\n\n`);
			};
			const unsubscribe = store.subscribe(sendNews);
			const unheard = orders(() => send('event: restart\ndata: {}\n\n'));
			const timer = setInterval(() => send(': ping\n\n'), pingEvery_ms);
			timer.unref();
			const end = (): void => {
				stop();
				controller.close();
			};
			stop = () => {
				unsubscribe();
				unheard();
				clearInterval(timer);
				store.closing.removeEventListener('abort', end);
			};
			store.closing.addEventListener('abort', end);
			if (store.closing.aborted) return end();
			send('retry: 2000\n\n');
			sendNews();
		},
		cancel() {
			stop();
		},
	});
}
