/** Where on the canvas a view is drawn, and the lens that makes the picture independent of pixel rounding. */

export interface Box {
	left: number;
	top: number;
	right: number;
	bottom: number;
}

export interface ViewRect {
	/** canvas pixels, y from the bottom as WebGL counts */
	x: number;
	y: number;
	width: number;
	height: number;
	/** the same rectangle in CSS px relative to the middle of the element, y up: what the lens must show */
	lens: Box;
}

/**
 * The part of a box inside the canvas, rounded outward to whole canvas pixels; null when nothing of it shows.
 * Boxes and the middle of the view's element in CSS px of the window; `width`, `height` are the canvas's pixels.
 */
export const viewRect = (
	box: Box,
	middle: { x: number; y: number },
	canvas: Box,
	width: number,
	height: number,
): ViewRect | null => {
	const sx = width / (canvas.right - canvas.left);
	const sy = height / (canvas.bottom - canvas.top);
	const x0 = Math.max(0, Math.floor((box.left - canvas.left) * sx));
	const x1 = Math.min(width, Math.ceil((box.right - canvas.left) * sx));
	const y0 = Math.max(0, Math.floor((box.top - canvas.top) * sy));
	const y1 = Math.min(height, Math.ceil((box.bottom - canvas.top) * sy));
	if (!(x1 > x0 && y1 > y0)) return null;
	const [midX, midY] = [middle.x - canvas.left, middle.y - canvas.top];
	return {
		x: x0,
		y: height - y1,
		width: x1 - x0,
		height: y1 - y0,
		lens: { left: x0 / sx - midX, right: x1 / sx - midX, top: midY - y0 / sy, bottom: midY - y1 / sy },
	};
};

/** How far the eye stands from a tooth, in radii of its bounding sphere: far enough that its size can be trusted. */
export const EYE_radii = 9;

/** Near and far planes and the window on the near plane, mm, for a tooth at the middle of its element. */
export const frustum = (
	lens: Box,
	pxPerMm: number,
	radius_mm: number,
): Box & { near: number; far: number; distance: number } => {
	const distance = EYE_radii * radius_mm;
	const near = distance - 1.5 * radius_mm;
	const perPx = near / distance / pxPerMm;
	return {
		left: lens.left * perPx,
		right: lens.right * perPx,
		top: lens.top * perPx,
		bottom: lens.bottom * perPx,
		near,
		far: distance + 1.5 * radius_mm,
		distance,
	};
};
