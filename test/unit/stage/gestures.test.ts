import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { attachGestures, type Hands } from '../../../src/lib/stage/gestures';

// Two views on one page, without a browser: events as it would send them.

class FakeElement extends EventTarget {
	style = { touchAction: 'manipulation' };
	captured = new Set<number>();
	setPointerCapture(id: number) {
		this.captured.add(id);
	}
}

let page: EventTarget & { visibilityState: string };
let window_: EventTarget;
beforeEach(() => {
	page = Object.assign(new EventTarget(), { visibilityState: 'visible' });
	window_ = new EventTarget();
	vi.stubGlobal('window', window_);
	vi.stubGlobal('document', page);
});
afterEach(() => {
	vi.unstubAllGlobals();
});

const attach = () => {
	const turned = { dx: 0, zoom: 1, taps: 0, flicks: 0 };
	const hands: Hands = {
		grab: () => undefined,
		drag: (dx) => (turned.dx += dx),
		flick: () => (turned.flicks += 1),
		zoom: (factor) => (turned.zoom *= factor),
		reset: () => undefined,
		tap: () => {
			turned.taps += 1;
			return true;
		},
	};
	const element = new FakeElement();
	const detach = attachGestures(element as unknown as HTMLElement, hands);
	return { element, turned, detach };
};

const pointer = (type: string, id: number, x: number, y = 0, more: object = {}) =>
	Object.assign(new Event(type, { cancelable: true }), {
		pointerId: id,
		pointerType: 'touch',
		clientX: x,
		clientY: y,
		button: 0,
		buttons: 1,
		width: 20,
		height: 20,
		...more,
	});
/** A pointer event goes to the element first, then up to the window. */
const send = (element: EventTarget, event: Event) => {
	element.dispatchEvent(event);
	const again = Object.assign(new Event(event.type, { cancelable: true }), { ...event });
	if (event.type !== 'pointerdown') window_.dispatchEvent(again);
};

test('two fingers turn two teeth at the same time, and a pinch beside them zooms only its own', () => {
	const [left, right] = [attach(), attach()];
	send(left.element, pointer('pointerdown', 1, 0));
	send(right.element, pointer('pointerdown', 2, 500));
	send(right.element, pointer('pointerdown', 3, 600));
	for (let i = 1; i <= 20; i += 1) {
		send(left.element, pointer('pointermove', 1, i * 5));
		send(right.element, pointer('pointermove', 3, 600 + i * 10));
	}
	expect(left.turned.dx).toBeGreaterThan(90);
	expect(left.turned.zoom).toBe(1);
	expect(right.turned.dx).toBe(0);
	expect(right.turned.zoom).toBeGreaterThan(1.5);
	expect(left.element.captured.has(1)).toBe(true);
});

const endings: [string, (element: FakeElement) => void][] = [
	['lifted outside the element', () => window_.dispatchEvent(pointer('pointerup', 1, 50))],
	['cancelled', () => window_.dispatchEvent(pointer('pointercancel', 1, 50))],
	['capture lost', (element) => element.dispatchEvent(pointer('lostpointercapture', 1, 50))],
	['window without the keyboard', () => window_.dispatchEvent(new Event('blur'))],
	['page left', () => window_.dispatchEvent(new Event('pagehide'))],
	[
		'page hidden',
		() => {
			page.visibilityState = 'hidden';
			page.dispatchEvent(new Event('visibilitychange'));
		},
	],
	[
		'menu asked for with the mouse',
		(element) => element.dispatchEvent(pointer('contextmenu', 1, 50, 0, { pointerType: 'mouse' })),
	],
];
test.each(endings)('a finger is let go of: %s', (_, end) => {
	const { element, turned } = attach();
	send(element, pointer('pointerdown', 1, 0));
	for (let i = 1; i <= 5; i += 1) send(element, pointer('pointermove', 1, i * 10));
	end(element);
	const { dx } = turned;
	expect(dx).toBeGreaterThan(0);
	for (let i = 6; i <= 10; i += 1) send(element, pointer('pointermove', 1, i * 10));
	expect(turned.dx).toBe(dx);
	// and a new one turns as ever
	send(element, pointer('pointerdown', 2, 0));
	for (let i = 1; i <= 5; i += 1) send(element, pointer('pointermove', 2, i * 10));
	expect(turned.dx - dx).toBeCloseTo(50, 8);
	expect(turned.zoom).toBe(1);
});

test('a long press of a finger opens no menu and holds on', () => {
	const { element, turned } = attach();
	send(element, pointer('pointerdown', 1, 0));
	const menu = pointer('contextmenu', 1, 0);
	element.dispatchEvent(menu);
	expect(menu.defaultPrevented).toBe(true);
	for (let i = 1; i <= 5; i += 1) send(element, pointer('pointermove', 1, i * 10));
	expect(turned.dx).toBeCloseTo(50, 8);
});

test('a mouse whose button was let go unheard turns nothing; its other buttons never do', () => {
	const { element, turned } = attach();
	const mouse = { pointerType: 'mouse', width: 1, height: 1 };
	send(element, pointer('pointerdown', 1, 0, 0, mouse));
	send(element, pointer('pointermove', 1, 90, 0, { ...mouse, buttons: 0 }));
	send(element, pointer('pointermove', 1, 190, 0, mouse));
	send(element, pointer('pointerdown', 1, 0, 0, { ...mouse, button: 2 }));
	send(element, pointer('pointermove', 1, 190, 0, mouse));
	expect(turned.dx).toBe(0);
});

test('a capture that the browser refuses does not stop the finger', () => {
	const { element, turned } = attach();
	element.setPointerCapture = () => {
		throw new Error('InvalidPointerId');
	};
	send(element, pointer('pointerdown', 1, 0));
	for (let i = 1; i <= 5; i += 1) send(element, pointer('pointermove', 1, i * 10));
	expect(turned.dx).toBeCloseTo(50, 8);
});

test('the wheel zooms in the units in which it comes, and the page does not scroll', () => {
	const { element, turned } = attach();
	const wheel = (deltaY: number, deltaMode: number) =>
		Object.assign(new Event('wheel', { cancelable: true }), { deltaY, deltaMode });
	const up = wheel(-80, 0);
	element.dispatchEvent(up);
	expect(up.defaultPrevented).toBe(true);
	expect(turned.zoom).toBeGreaterThan(1);
	const { zoom } = turned;
	element.dispatchEvent(wheel(2, 1));
	expect(turned.zoom).toBeCloseTo(zoom / zoom, 8);
});

test('detached it hears nothing more, and leaves the element as it was', () => {
	const { element, turned, detach } = attach();
	send(element, pointer('pointerdown', 1, 0));
	detach();
	for (let i = 1; i <= 5; i += 1) send(element, pointer('pointermove', 1, i * 10));
	send(element, pointer('pointerdown', 2, 0));
	send(element, pointer('pointerup', 2, 0));
	expect(turned).toEqual({ dx: 0, zoom: 1, taps: 0, flicks: 0 });
	expect(element.style.touchAction).toBe('manipulation');
});
