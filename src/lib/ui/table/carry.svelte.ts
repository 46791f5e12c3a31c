import { createContext } from 'svelte';

/** A finger wanders this far before a press counts as carrying; a mouse too. */
export const CARRY_START_px = { touch: 12, mouse: 8 } as const;

/** Where what is carried would land. */
export type Landing = { on: 'place'; place: number } | { on: 'table' } | { on: 'drawer' };

export interface Carried {
	/** specimen id */
	id: string;
	pictureUrl: string;
	/** place that it was lifted from; null = from the drawer */
	from: number | null;
}

/**
 * Carrying a tooth between the drawer and the table with a finger or the mouse. One at a time: a second finger
 * that would carry is left alone. Everything that carrying does, a tap does too.
 */
export class Carry {
	/** what hangs on the finger now; null = nothing */
	carried = $state.raw<Carried | null>(null);
	/** CSS px in the window */
	x = $state(0);
	y = $state(0);
	landing = $state.raw<Landing | null>(null);
	#onland: (carried: Carried, landing: Landing) => void;
	#stop: (() => void) | null = null;

	constructor(onland: (carried: Carried, landing: Landing) => void) {
		this.#onland = onland;
	}

	/**
	 * A press on something that can be carried. `sideways`: the finger may scroll what it lies on sideways, so that
	 * only an upright move lifts it.
	 */
	press(event: PointerEvent, what: Carried, sideways: boolean): void {
		if (this.#stop || event.button !== 0) return;
		const { pointerId, clientX, clientY } = event;
		const source = event.currentTarget as HTMLElement;
		const mouse = event.pointerType === 'mouse';
		const move = (to: PointerEvent) => {
			if (to.pointerId !== pointerId) return;
			if (!this.carried) {
				const [dx, dy] = [Math.abs(to.clientX - clientX), Math.abs(to.clientY - clientY)];
				if (Math.hypot(dx, dy) < CARRY_START_px[mouse ? 'mouse' : 'touch']) return;
				if (sideways && !mouse && dx > dy) return;
				try {
					source.setPointerCapture(pointerId);
				} catch {
					return stop(); // the finger has gone already
				}
				this.carried = what;
			}
			this.x = to.clientX;
			this.y = to.clientY;
			this.landing = landingAt(to.clientX, to.clientY, what.from);
		};
		const up = (to: PointerEvent) => {
			if (to.pointerId !== pointerId) return;
			const landing = this.carried && landingAt(to.clientX, to.clientY, what.from);
			stop();
			if (landing) this.#onland(what, landing);
		};
		const cancel = (to: PointerEvent) => {
			if (to.pointerId === pointerId) stop();
		};
		// what lies within the source loses the finger to it when carrying begins
		const lost = (to: PointerEvent) => {
			if (to.target === source) cancel(to);
		};
		const key = (pressed: KeyboardEvent) => {
			if (pressed.key === 'Escape') stop();
		};
		const stop = () => {
			window.removeEventListener('pointermove', move);
			window.removeEventListener('pointerup', up);
			window.removeEventListener('pointercancel', cancel);
			source.removeEventListener('lostpointercapture', lost);
			window.removeEventListener('blur', stop);
			document.removeEventListener('visibilitychange', stop);
			window.removeEventListener('keydown', key);
			this.#stop = null;
			// the press that carried is no tap
			if (this.carried) swallowClick(source, pointerId);
			this.carried = null;
			this.landing = null;
		};
		this.#stop = stop;
		window.addEventListener('pointermove', move);
		window.addEventListener('pointerup', up);
		window.addEventListener('pointercancel', cancel);
		source.addEventListener('lostpointercapture', lost);
		window.addEventListener('blur', stop);
		document.addEventListener('visibilitychange', stop);
		window.addEventListener('keydown', key);
	}

	/** Lets go of everything: the room is left. */
	drop(): void {
		this.#stop?.();
	}
}

/** What lies under a place in the window; null where nothing can be put down. */
function landingAt(x: number, y: number, from: number | null): Landing | null {
	const under = document.elementFromPoint(x, y);
	const place = under?.closest<HTMLElement>('[data-place]');
	if (place) return { on: 'place', place: Number(place.dataset.place) - 1 };
	if (under?.closest('[data-drawer]')) return from === null ? null : { on: 'drawer' };
	return under?.closest('[data-table]') && from === null ? { on: 'table' } : null;
}

/** The click at the end of this press does nothing; it may be long until the finger lifts. */
function swallowClick(source: HTMLElement, pointerId: number): void {
	const swallow = (event: Event) => {
		event.stopPropagation();
		event.preventDefault();
	};
	const done = () => source.removeEventListener('click', swallow, { capture: true });
	source.addEventListener('click', swallow, { capture: true });
	if (source.hasPointerCapture(pointerId)) {
		const over = () => setTimeout(done, 50);
		source.addEventListener('lostpointercapture', over, { once: true });
	} else setTimeout(done, 50);
}

export const [getCarry, setCarry] = createContext<Carry>();
