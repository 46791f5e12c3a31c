/**
 * Tells when the exhibit on the server is another than the one on screen. The browser reconnects by
 * itself; the server says its hash at every connect, so that nothing is missed while it was away.
 * `asWhom` (see care/orders) says which screen listens, so that it can be told to restart: `onRestart`.
 * Returns how to stop.
 */
export function followExhibit(
	shownHash: () => string | null,
	onOther: () => void,
	asWhom = '',
	onRestart: () => void = () => undefined,
): () => void {
	const events = new EventSource(`/live${asWhom}`);
	events.addEventListener('restart', () => onRestart());
	events.addEventListener('exhibit', (event) => {
		const { hash } = JSON.parse((event as MessageEvent<string>).data) as { hash: string | null };
		if (hash !== null && hash !== shownHash()) onOther();
	});
	return () => events.close();
}
