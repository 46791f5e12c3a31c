/** Hands on one view: fingers, mouse and wheel become turns, zooms, flicks and resets. */
import { Gesture } from '@use-gesture/vanilla';
import {
	DOUBLE_TAP_ms,
	DOUBLE_TAP_px,
	DRAG_START_px,
	FLICK_MIN_px_per_ms,
	FLICK_STALE_ms,
	PINCH_MIN_SPAN_px,
	TAP_ms,
	WHEEL_ZOOM_PER_px,
} from './thresholds';

export interface Hands {
	/** a finger has come down: whatever glides, stops */
	grab(): void;
	/** CSS px since the last call */
	drag(dx_px: number, dy_px: number): void;
	/** let go in motion, CSS px per ms */
	flick(vx: number, vy: number): void;
	zoom(factor: number): void;
	reset(): void;
	/** A tap at a place in the window, CSS px. True: it has been used up, and does not count towards a double tap. */
	tap(x: number, y: number): boolean;
}

interface Sample {
	/** time of the event and since the one before it, ms */
	t: number;
	dt: number;
	dx: number;
	dy: number;
}

/** Mean speed of a finger over its last moments before it lifted; zero when it had come to rest. */
export const releaseSpeed = (samples: readonly Sample[], lifted_ms: number): { vx: number; vy: number } => {
	const fresh = samples.filter((s) => lifted_ms - s.t <= FLICK_STALE_ms);
	if (fresh.length === 0) return { vx: 0, vy: 0 };
	const span = Math.max(1, lifted_ms - (fresh[0].t - fresh[0].dt));
	const sum = fresh.reduce((s, m) => ({ dx: s.dx + m.dx, dy: s.dy + m.dy }), { dx: 0, dy: 0 });
	return { vx: sum.dx / span, vy: sum.dy / span };
};

/** Listens on the element until the returned function is called. The element must not scroll: touch-action none. */
export const attachGestures = (element: HTMLElement, hands: Hands): (() => void) => {
	const touchAction = element.style.touchAction;
	element.style.touchAction = 'none';

	let begun = false; // past the drag threshold
	let pinched = false; // two fingers were down at some time in this touch
	let samples: Sample[] = [];
	let lastMove_ms = 0;
	let lastTap: { t: number; x: number; y: number } | null = null;

	const tapped = (t: number, x: number, y: number) => {
		const second =
			lastTap && t - lastTap.t <= DOUBLE_TAP_ms && Math.hypot(x - lastTap.x, y - lastTap.y) <= DOUBLE_TAP_px;
		lastTap = second ? null : { t, x, y };
		if (second) hands.reset();
	};

	const listen = () =>
		new Gesture(
			element,
			{
				onDrag: ({ first, last, delta, movement, xy, event, pinching, canceled, elapsedTime }) => {
					const t = event.timeStamp;
					if (first) {
						begun = false;
						pinched = false;
						samples = [];
						lastMove_ms = t;
						hands.grab();
					}
					if (pinching) pinched = true;
					const kind = 'pointerType' in event ? event.pointerType : 'mouse';
					const start_px = DRAG_START_px[kind as keyof typeof DRAG_START_px] ?? DRAG_START_px.touch;
					if (!begun && Math.hypot(movement[0], movement[1]) >= start_px) begun = true;
					if (begun && !pinching && (delta[0] !== 0 || delta[1] !== 0)) {
						if (!last) samples.push({ t, dt: t - lastMove_ms, dx: delta[0], dy: delta[1] });
						if (samples.length > 24) samples.shift();
						hands.drag(delta[0], delta[1]);
					}
					lastMove_ms = t;
					if (!last || pinched || canceled || event.type !== 'pointerup') return;
					if (!begun) {
						const used = elapsedTime <= TAP_ms && hands.tap(xy[0], xy[1]);
						if (!used && elapsedTime <= DOUBLE_TAP_ms) tapped(t, xy[0], xy[1]);
						return;
					}
					const { vx, vy } = releaseSpeed(samples, t);
					if (Math.hypot(vx, vy) >= FLICK_MIN_px_per_ms) hands.flick(vx, vy);
				},
				onPinch: ({ first, last, da, memo, event }) => {
					if (first) pinched = true;
					const span = da[0];
					if (event.type === 'wheel' || span < PINCH_MIN_SPAN_px) return undefined;
					const before = memo as number | undefined;
					if (before && !first && !last) hands.zoom(span / before);
					return span;
				},
				onWheel: ({ delta, event }) => {
					if (event.cancelable) event.preventDefault();
					if (delta[1] !== 0) hands.zoom(Math.exp(-delta[1] * WHEEL_ZOOM_PER_px));
				},
			},
			{
				drag: { threshold: 0, filterTaps: false, pointer: { keys: false, capture: true } },
				pinch: { pinchOnWheel: false, threshold: 0 },
				wheel: { eventOptions: { passive: false } },
			},
		);

	let gesture = listen();
	// a page that loses the keyboard or is hidden may never hear of the finger's lifting: begin afresh
	const letGo = () => {
		gesture.destroy();
		begun = false;
		samples = [];
		gesture = listen();
	};
	const hidden = () => {
		if (document.visibilityState === 'hidden') letGo();
	};
	window.addEventListener('blur', letGo);
	document.addEventListener('visibilitychange', hidden);

	return () => {
		gesture.destroy();
		window.removeEventListener('blur', letGo);
		document.removeEventListener('visibilitychange', hidden);
		element.style.touchAction = touchAction;
	};
};
