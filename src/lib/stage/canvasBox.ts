/**
 * How much of the window the canvas covers. A page is put together again wherever its canvas changes, and without a
 * graphics card that costs more than the teeth themselves: so the canvas is only as large as the teeth need.
 * Boxes in CSS px of the window.
 */
import type { Box } from './viewport';

/** Edges lie on this grid, so that a turning tooth does not change the canvas's size at every frame. */
export const GRID_px = 32;
/** At rest the canvas shrinks when it is this many times larger than needed. */
export const SLACK = 1.3;

const area = (b: Box) => (b.right - b.left) * (b.bottom - b.top);

/** What two boxes share; null when they do not meet. */
export const intersection = (a: Box, b: Box): Box | null => {
	const both = {
		left: Math.max(a.left, b.left),
		top: Math.max(a.top, b.top),
		right: Math.min(a.right, b.right),
		bottom: Math.min(a.bottom, b.bottom),
	};
	return both.right > both.left && both.bottom > both.top ? both : null;
};

/** The smallest box round all; null for none. */
export const union = (boxes: readonly Box[]): Box | null =>
	boxes.length === 0
		? null
		: {
				left: Math.min(...boxes.map((b) => b.left)),
				top: Math.min(...boxes.map((b) => b.top)),
				right: Math.max(...boxes.map((b) => b.right)),
				bottom: Math.max(...boxes.map((b) => b.bottom)),
			};

/** The canvas's next box: it only grows while things move, and shrinks at rest. `window_` limits it. */
export const nextCanvasBox = (
	now: Box | null,
	needs: readonly Box[],
	window_: Box,
	moving: boolean,
): Box | null => {
	const needed = union(needs.flatMap((need) => intersection(need, window_) ?? []));
	if (!needed) return now && intersection(now, window_);
	const gridded: Box = {
		left: Math.floor(needed.left / GRID_px) * GRID_px,
		top: Math.floor(needed.top / GRID_px) * GRID_px,
		right: Math.ceil(needed.right / GRID_px) * GRID_px,
		bottom: Math.ceil(needed.bottom / GRID_px) * GRID_px,
	};
	const grown = now ? union([now, gridded])! : gridded;
	const kept = moving || area(grown) <= SLACK * area(gridded) ? grown : gridded;
	return intersection(kept, window_);
};
