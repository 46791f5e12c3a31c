/** What is used here of the browser's Navigation API (HTML standard, 7.2.7); not every browser has it. */
interface NavigateEvent extends Event {
	destination: { url: string; sameDocument: boolean };
	navigationType: 'push' | 'replace' | 'reload' | 'traverse';
	hashChange: boolean;
	downloadRequest: string | null;
	/** what a form sends; it could not be sent again */
	formData: FormData | null;
}

/**
 * Whoever replaces the page by one that the server must give, a router that could not load a room too, is held back until
 * it is known that the server is there: else the browser's own error page would stand on the screen, with no way back.
 * `ask` is given what to do then. Without the browser's help nothing is held back.
 */
export function guardLeaving(
	target: Window & { navigation?: EventTarget },
	ask: (leave: () => void) => void,
): () => void {
	const { navigation, location } = target;
	let leaving = false;
	const guard = (event: Event) => {
		const { destination, navigationType, hashChange, downloadRequest, formData, cancelable } =
			event as NavigateEvent;
		if (leaving || !cancelable || hashChange || destination.sameDocument) return;
		if (downloadRequest !== null || formData !== null) return;
		if (navigationType === 'traverse' || new URL(destination.url).origin !== location.origin) return;
		event.preventDefault();
		ask(() => {
			leaving = true;
			if (navigationType === 'reload') location.reload();
			else if (navigationType === 'replace') location.replace(destination.url);
			else location.assign(destination.url);
			// a page that does not come after all leaves the guard standing
			setTimeout(() => (leaving = false), 0);
		});
	};
	navigation?.addEventListener('navigate', guard);
	return () => navigation?.removeEventListener('navigate', guard);
}
