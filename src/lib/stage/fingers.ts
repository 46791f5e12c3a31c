/**
 * What the fingers, pens and the mouse on one view mean: turns, zooms, flicks, taps. A state machine without a page,
 * so that every order of events can be tried. What rests on the screen (a palm, a forgotten hand) means nothing.
 *
 * Of the contacts that count, one turns; two zoom; a third waits until it is one of two. More of them are a hand laid
 * flat, and none of them counts until it has lifted.
 */
import { releaseSpeed, type Sample } from './releaseSpeed';
import {
	DOUBLE_TAP_ms,
	DOUBLE_TAP_px,
	DRAG_START_px,
	FLICK_MIN_px_per_ms,
	HAND_contacts,
	PALM_px,
	PINCH_MIN_SPAN_px,
	PINCH_START_px,
	REST_ms,
	TAP_ms,
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

/** One contact as an event tells it: place in the window in CSS px, time in ms. */
export interface Contact {
	id: number;
	kind: keyof typeof DRAG_START_px;
	x: number;
	y: number;
	t: number;
	/** larger side of what touches the screen, CSS px; 0 or 1 where the screen cannot tell */
	size_px: number;
}

export interface Fingers {
	down(contact: Contact): void;
	move(contact: Contact): void;
	up(contact: Contact): void;
	/** The contact has gone without having been lifted. */
	cancel(id: number): void;
	/** All contacts are forgotten: they count again once they have come down anew. */
	letGo(): void;
	has(id: number): boolean;
	/** contacts on the view, resting ones too */
	readonly held: number;
}

interface Finger {
	x: number;
	y: number;
	kind: Contact['kind'];
	/** where and when it came down, or began to count alone */
	from: { x: number; y: number };
	since_ms: number;
	/** last time that it moved by more than it trembles */
	stirred: { t: number; x: number; y: number };
	/** counts for nothing until it lifts */
	resting: boolean;
	/** past the drag threshold */
	begun: boolean;
	/** another finger counted beside it at some time */
	shared: boolean;
	samples: Sample[];
	last_ms: number;
}

const MAX_SAMPLES = 24;
const apart = (a: { x: number; y: number }, b: { x: number; y: number }) => Math.hypot(a.x - b.x, a.y - b.y);

export const createFingers = (hands: Hands): Fingers => {
	const fingers = new Map<number, Finger>();
	let lastTap: { t: number; x: number; y: number } | null = null;
	/** distance of the two that zoom: where zooming stands, and whether it has begun; null = to be taken anew */
	let span: { at: number; begun: boolean } | null = null;

	const counting = () => [...fingers.values()].filter((finger) => !finger.resting);
	const palm = ({ kind, size_px }: Contact) => kind === 'touch' && size_px > PALM_px;

	/** After the set of fingers that count has changed: nothing may jump. */
	const settle = (t: number) => {
		span = null;
		const now = counting();
		if (now.length >= 2) for (const finger of now) finger.shared = true;
		if (now.length !== 1) return;
		const [alone] = now;
		if (!alone.shared) return;
		alone.from = { x: alone.x, y: alone.y };
		alone.begun = false;
		alone.samples = [];
		alone.last_ms = t;
	};

	const tapped = (t: number, x: number, y: number) => {
		const second =
			lastTap && t - lastTap.t <= DOUBLE_TAP_ms && Math.hypot(x - lastTap.x, y - lastTap.y) <= DOUBLE_TAP_px;
		lastTap = second ? null : { t, x, y };
		if (second) hands.reset();
	};

	const turn = (finger: Finger, { x, y, t }: Contact) => {
		const [dx, dy] = [x - finger.x, y - finger.y];
		if (!finger.begun && apart({ x, y }, finger.from) >= DRAG_START_px[finger.kind]) finger.begun = true;
		if (finger.begun && (dx !== 0 || dy !== 0)) {
			finger.samples.push({ t, dt: t - finger.last_ms, dx, dy });
			if (finger.samples.length > MAX_SAMPLES) finger.samples.shift();
			hands.drag(dx, dy);
		}
		finger.last_ms = t;
	};

	const pinch = (a: Finger, b: Finger) => {
		const now = apart(a, b);
		if (now < PINCH_MIN_SPAN_px) {
			span = null;
			return;
		}
		span ??= { at: now, begun: false };
		if (!span.begun && Math.abs(now - span.at) < PINCH_START_px) return;
		// from here on, without the way it took to begin
		const factor = span.begun ? now / span.at : 1;
		span = { at: now, begun: true };
		if (factor !== 1) hands.zoom(factor);
	};

	return {
		down(contact) {
			const { id, x, y, t, kind } = contact;
			fingers.delete(id);
			// what has lain still for long beside a new finger only rests there
			for (const finger of counting()) if (t - finger.stirred.t > REST_ms) finger.resting = true;
			fingers.set(id, {
				x,
				y,
				kind,
				from: { x, y },
				since_ms: t,
				stirred: { t, x, y },
				resting: palm(contact),
				begun: false,
				shared: false,
				samples: [],
				last_ms: t,
			});
			const now = counting();
			if (now.length > HAND_contacts) for (const finger of now) finger.resting = true;
			else if (now.length === 1 && !fingers.get(id)!.resting) hands.grab();
			settle(t);
		},
		move(contact) {
			const finger = fingers.get(contact.id);
			if (!finger) return;
			if (!finger.resting && palm(contact)) {
				finger.resting = true;
				settle(contact.t);
			}
			if (apart(contact, finger.stirred) >= DRAG_START_px[finger.kind])
				finger.stirred = { t: contact.t, x: contact.x, y: contact.y };
			const now = counting();
			if (!finger.resting && now.length === 1) turn(finger, contact);
			finger.x = contact.x;
			finger.y = contact.y;
			if (now.length >= 2 && (finger === now[0] || finger === now[1])) pinch(now[0], now[1]);
		},
		up(contact) {
			const { id, x, y, t } = contact;
			const finger = fingers.get(id);
			if (!finger) return;
			fingers.delete(id);
			if (finger.resting) return;
			settle(t);
			if (finger.begun && counting().length === 0 && !finger.shared) {
				const { vx, vy } = releaseSpeed(finger.samples, t);
				if (Math.hypot(vx, vy) >= FLICK_MIN_px_per_ms) hands.flick(vx, vy);
			}
			if (finger.begun || finger.shared || apart(contact, finger.from) >= DRAG_START_px[finger.kind]) return;
			const lasted_ms = t - finger.since_ms;
			const used = lasted_ms <= TAP_ms && hands.tap(x, y);
			if (!used && lasted_ms <= DOUBLE_TAP_ms) tapped(t, x, y);
		},
		cancel(id) {
			const finger = fingers.get(id);
			if (!finger) return;
			fingers.delete(id);
			if (!finger.resting) settle(finger.last_ms);
		},
		letGo() {
			fingers.clear();
			span = null;
			lastTap = null;
		},
		has: (id) => fingers.has(id),
		get held() {
			return fingers.size;
		},
	};
};
