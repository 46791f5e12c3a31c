/** One view's state: its shape, where its tooth is turned to, and what is still easing or gliding. */
import type { Cut, Pin, Pose, ShapeRef, SurfaceHit } from './api';
import type { LoadedShape } from './loadShape';
import type { ToothMaterials } from './materials';
import type { Loan } from './pool';
import type { ShownParts } from './shownParts';
import { between, DEFAULT_POSE, easeOut, glided, turned } from './pose';
import { EASE_ms } from './thresholds';
import type { ViewCut } from './tools/viewCut';

/** What the view needs to know of any shape. */
export type ShownShape = Pick<ShapeRef, 'bounds' | 'crownHeight_mm'>;

export interface HandledView {
	element: HTMLElement;
	materials: ToothMaterials;
	/** what is shown, whether loaded or made in the browser */
	shape: ShownShape | null;
	loan: Loan<LoadedShape> | null;
	/** what `showMesh` shows, in the place of a loan */
	parts: ShownParts | null;
	pose: Pose;
	/** px per mm at zoom 1, in this layout; null while empty */
	fit: number | null;
	/** what the fit is multiplied by on its way from an older one; 1 at rest */
	stretch: { from: number; since_ms: number } | null;
	ease: { from: Pose; to: Pose; since_ms: number } | null;
	glide: { from: Pose; yaw: number; tilt: number; since_ms: number } | null;
	/** goes up with each show(): a load that comes late knows that it is late */
	asked: number;
	/** resolve when the next frame has been drawn */
	waiting: (() => void)[];
	pins: readonly Pin[];
	/** the cut that was asked for, and as it goes through the tooth shown; null = whole */
	cutAsked: Cut | null;
	cut: ViewCut | null;
	tapListeners: Set<(hit: SurfaceHit | null) => void>;
}

export const createHandledView = (element: HTMLElement, materials: ToothMaterials): HandledView => ({
	element,
	materials,
	shape: null,
	loan: null,
	parts: null,
	pose: { ...DEFAULT_POSE },
	fit: null,
	stretch: null,
	ease: null,
	glide: null,
	asked: 0,
	waiting: [],
	pins: [],
	cutAsked: null,
	cut: null,
	tapListeners: new Set(),
});

const stretchAt = (view: HandledView, now_ms: number): number =>
	view.stretch ? view.stretch.from ** (1 - easeOut((now_ms - view.stretch.since_ms) / EASE_ms)) : 1;

/** CSS px per mm now on screen; null while empty. */
export const shownPxPerMm = (view: HandledView, now_ms: number): number | null =>
	view.fit === null || !view.shape ? null : view.fit * view.pose.zoom * stretchAt(view, now_ms);

/** Gives the view a new fit; eased from the size on screen unless `at_once`. Returns whether it changed. */
export const setFit = (view: HandledView, fit: number | null, now_ms: number, at_once: boolean): boolean => {
	const old = view.fit;
	if (old === fit) return false;
	const shown = old === null ? null : old * stretchAt(view, now_ms);
	view.fit = fit;
	view.stretch = at_once || shown === null || fit === null ? null : { from: shown / fit, since_ms: now_ms };
	return true;
};

/** Starts an ease to `to`, or jumps. */
export const easeTo = (view: HandledView, to: Pose, now_ms: number, at_once: boolean): void => {
	view.glide = null;
	view.ease = at_once ? null : { from: view.pose, to, since_ms: now_ms };
	if (at_once) view.pose = { ...to };
};

/** Where the view is heading: the end of an ease, or where it stands. */
export const heading = (view: HandledView): Pose => view.ease?.to ?? view.pose;

/** Moves eases and glides on to `now_ms`; returns whether anything moved. */
export const advance = (view: HandledView, now_ms: number): boolean => {
	let moved = false;
	if (view.ease) {
		const t = (now_ms - view.ease.since_ms) / EASE_ms;
		view.pose = between(view.ease.from, view.ease.to, easeOut(t));
		if (t >= 1) view.ease = null;
		moved = true;
	}
	if (view.glide) {
		const { from, yaw, tilt, since_ms } = view.glide;
		const { travel_ms, over } = glided(Math.hypot(yaw, tilt), now_ms - since_ms);
		view.pose = { ...turned(from, yaw * travel_ms, tilt * travel_ms), zoom: view.pose.zoom };
		if (over) view.glide = null;
		moved = true;
	}
	if (view.stretch) {
		if (now_ms - view.stretch.since_ms >= EASE_ms) view.stretch = null;
		moved = true;
	}
	return moved;
};

/** Brings what still moves to its end at once: an ease to its goal, a glide to where it is. Returns whether anything moved. */
export const endMotion = (view: HandledView): boolean => {
	const moving = Boolean(view.ease || view.glide || view.stretch);
	view.pose = { ...heading(view) };
	view.ease = null;
	view.glide = null;
	view.stretch = null;
	return moving;
};
