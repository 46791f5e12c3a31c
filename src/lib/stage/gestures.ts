/** Hands on one view: listens to its element and hands on what fingers, mouse and wheel mean. */
import { createFingers, type Contact, type Hands } from './fingers';
import { DRAG_START_px, WHEEL_LINE_px, WHEEL_PAGE_px, WHEEL_ZOOM_PER_px } from './thresholds';

export type { Hands } from './fingers';

const contactOf = (event: PointerEvent): Contact => ({
	id: event.pointerId,
	kind: event.pointerType in DRAG_START_px ? (event.pointerType as Contact['kind']) : 'touch',
	x: event.clientX,
	y: event.clientY,
	t: event.timeStamp,
	size_px: Math.max(event.width || 0, event.height || 0),
});

/**
 * Listens on the element until the returned function is called. The element must not scroll: touch-action none.
 * Each finger is followed from the element on which it came down, so that several views are turned at once.
 */
export const attachGestures = (element: HTMLElement, hands: Hands): (() => void) => {
	const touchAction = element.style.touchAction;
	element.style.touchAction = 'none';
	const fingers = createFingers(hands);

	const down = (event: PointerEvent) => {
		if (event.pointerType === 'mouse' && event.button !== 0) return;
		try {
			(event.target as Element).setPointerCapture(event.pointerId);
		} catch {
			// the finger has lifted already, or was never on the screen: its end is heard of at the window
		}
		fingers.down(contactOf(event));
	};
	const move = (event: PointerEvent) => {
		if (!fingers.has(event.pointerId)) return;
		// the button was let go where nobody heard of it
		if (event.pointerType === 'mouse' && event.buttons === 0) fingers.cancel(event.pointerId);
		else fingers.move(contactOf(event));
	};
	const up = (event: PointerEvent) => fingers.up(contactOf(event));
	const cancel = (event: PointerEvent) => fingers.cancel(event.pointerId);
	const wheel = (event: WheelEvent) => {
		if (event.cancelable) event.preventDefault();
		const unit_px = event.deltaMode === 1 ? WHEEL_LINE_px : event.deltaMode === 2 ? WHEEL_PAGE_px : 1;
		const delta_px = event.deltaY * unit_px;
		if (delta_px !== 0) hands.zoom(Math.exp(-delta_px * WHEEL_ZOOM_PER_px));
	};
	// a long press asks for a menu that has nothing to say here; a mouse that asks for one has let go
	const menu = (event: Event) => {
		event.preventDefault();
		if ((event as PointerEvent).pointerType !== 'touch') fingers.letGo();
	};
	// a page that loses the keyboard or is hidden may never hear of the finger's lifting: begin afresh
	const letGo = () => fingers.letGo();
	const hidden = () => {
		if (document.visibilityState === 'hidden') letGo();
	};

	element.addEventListener('pointerdown', down);
	element.addEventListener('wheel', wheel, { passive: false });
	element.addEventListener('contextmenu', menu);
	element.addEventListener('lostpointercapture', cancel);
	window.addEventListener('pointermove', move);
	window.addEventListener('pointerup', up);
	window.addEventListener('pointercancel', cancel);
	window.addEventListener('blur', letGo);
	window.addEventListener('pagehide', letGo);
	document.addEventListener('visibilitychange', hidden);

	return () => {
		fingers.letGo();
		element.removeEventListener('pointerdown', down);
		element.removeEventListener('wheel', wheel);
		element.removeEventListener('contextmenu', menu);
		element.removeEventListener('lostpointercapture', cancel);
		window.removeEventListener('pointermove', move);
		window.removeEventListener('pointerup', up);
		window.removeEventListener('pointercancel', cancel);
		window.removeEventListener('blur', letGo);
		window.removeEventListener('pagehide', letGo);
		document.removeEventListener('visibilitychange', hidden);
		element.style.touchAction = touchAction;
	};
};
