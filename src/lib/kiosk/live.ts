/** As server/eventStream.ts tells it. */
export interface LiveNews {
	/** of the exhibit on the server */
	hash: string;
	/** version of the program on the server */
	code: string;
	/** hashes of the shapes that the exhibit now has */
	shapes: string[];
}

export interface Live {
	/** Whether the server was there a moment ago, as far as the browser has noticed. */
	connected: () => boolean;
	stop: () => void;
}

/** A browser does not try again by itself where somebody in between answered for the server. */
const AGAIN_AFTER_ms = 5_000;

/**
 * Tells what exhibit and program the server has. The browser reconnects by itself; the server tells at every connect,
 * so that nothing is missed while it was away. `asWhom` (see care/orders) says which screen listens, so that it can be told
 * to restart: `onRestart`.
 */
export function followExhibit(
	onNews: (news: LiveNews) => void,
	asWhom = '',
	onRestart: () => void = () => undefined,
): Live {
	let events: EventSource | null = null;
	let timer: ReturnType<typeof setTimeout> | undefined;
	const open = () => {
		events = new EventSource(`/live${asWhom}`);
		events.addEventListener('restart', () => onRestart());
		events.addEventListener('exhibit', (event) =>
			onNews(JSON.parse((event as MessageEvent<string>).data) as LiveNews),
		);
		events.addEventListener('error', () => {
			if (events?.readyState === EventSource.CLOSED) timer = setTimeout(open, AGAIN_AFTER_ms);
		});
	};
	open();
	return {
		connected: () => events?.readyState === EventSource.OPEN,
		stop() {
			clearTimeout(timer);
			events?.close();
		},
	};
}
