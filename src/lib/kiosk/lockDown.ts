import { restingTouch } from './restingTouch';

/** With Ctrl or Command: print, save, open, source, find, history, downloads, bookmark, new windows, larger and smaller. */
const SHORTCUTS = new Set(['p', 's', 'o', 'u', 'f', 'g', 'h', 'j', 'd', 'n', 't', '+', '-', '=', '0']);
const FUNCTIONS = new Set(['F1', 'F3', 'F7', 'F11', 'F12']);

/** Whether a key would lead out of the exhibit, into a dialog of the browser or to another size of page. */
export function leadsOut({
	key,
	ctrlKey,
	metaKey,
	altKey,
}: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey'>): boolean {
	if (FUNCTIONS.has(key)) return true;
	if ((ctrlKey || metaKey) && SHORTCUTS.has(key.toLowerCase())) return true;
	return altKey && (key === 'ArrowLeft' || key === 'ArrowRight' || key === 'Home');
}

/** A place where somebody writes keeps its own ways. */
const writes = (target: EventTarget | null): boolean =>
	target instanceof Element && target.closest('input, textarea, [contenteditable]') !== null;

/**
 * Keeps a gallery's screen to the exhibit: no menu, no selecting, nothing dragged out or dropped in, no zoom of the page,
 * no dialog of the browser by a key. What style can do stands in app.css under [data-gallery]; what only the browser's own
 * settings can do is the business of how it is started. Returns what ends it.
 */
export function lockDown(page: Window): () => void {
	const { document } = page;
	const root = document.documentElement;
	const end = new AbortController();
	const refuse = (event: Event) => event.preventDefault();
	const on = (target: EventTarget, name: string, call: (event: Event) => void) =>
		target.addEventListener(name, call, { signal: end.signal, passive: false, capture: true });
	for (const name of ['contextmenu', 'selectstart'])
		on(document, name, (event) => !writes(event.target) && refuse(event));
	for (const name of ['dragstart', 'dragover', 'drop', 'gesturestart', 'gesturechange'])
		on(document, name, refuse);
	// two fingers on a trackpad, or the wheel with Ctrl, zoom the page
	on(page, 'wheel', (event) => (event as WheelEvent).ctrlKey && refuse(event));
	on(page, 'keydown', (event) => leadsOut(event as KeyboardEvent) && refuse(event));
	// the middle button opens new windows
	on(document, 'auxclick', refuse);
	on(document, 'mousedown', (event) => (event as MouseEvent).button > 0 && refuse(event));
	// a hand that leans on the glass presses nothing
	const resting = restingTouch();
	const touch = (call: (event: PointerEvent) => void) => (event: Event) =>
		(event as PointerEvent).pointerType === 'touch' && call(event as PointerEvent);
	on(
		document,
		'pointerdown',
		touch((event) => resting.down(event.pointerId, event.timeStamp, event.isPrimary)),
	);
	for (const name of ['pointerup', 'pointercancel'])
		on(
			document,
			name,
			touch((event) => resting.up(event.pointerId, event.timeStamp)),
		);
	on(
		document,
		'click',
		touch((event) => {
			if (!resting.refuses(event.pointerId)) return;
			refuse(event);
			event.stopImmediatePropagation();
		}),
	);
	root.dataset.gallery = '';
	return () => {
		end.abort();
		delete root.dataset.gallery;
	};
}
