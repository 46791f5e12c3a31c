import type { ExhibitStore } from './exhibitStore';

export const PING_EVERY_MS = 15_000;

/**
 * Server-sent events about the exhibit: event `exhibit` with `{"hash"}` at once and at each change,
 * and a comment every 15 s so that both ends notice a dead connection. Everything is let go when the
 * reader goes away; the stream ends when the store closes. `orders` hands over what makes the reader load its page
 * anew (event `restart`), and takes what ends that.
 */
export function eventStream(
	store: Pick<ExhibitStore, 'current' | 'subscribe' | 'closing'>,
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
			const sendHash = (hash: string): void => send(`event: exhibit\ndata: ${JSON.stringify({ hash })}\n\n`);
			const unsubscribe = store.subscribe((event) => sendHash(event.hash));
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
			const current = store.current();
			if (current) sendHash(current.hash);
		},
		cancel() {
			stop();
		},
	});
}
