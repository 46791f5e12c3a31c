/**
 * Tells when the exhibit on the server is another than the one on screen. The browser reconnects by
 * itself; the server says its hash at every connect, so that nothing is missed while it was away.
 * Returns how to stop.
 */
export function followExhibit(shownHash: () => string | null, onOther: () => void): () => void {
	const events = new EventSource('/live');
	events.addEventListener('exhibit', (event) => {
		const { hash } = JSON.parse((event as MessageEvent<string>).data) as { hash: string | null };
		if (hash !== null && hash !== shownHash()) onOther();
	});
	return () => events.close();
}
