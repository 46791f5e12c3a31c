/** How large to draw each tooth, so that views can be compared. Lengths in mm, sizes in CSS px. */
import type { ScaleMode, ShapeRef } from './api';
import { MARGIN } from './thresholds';

export interface FitInput {
	width_px: number;
	height_px: number;
	bounds: ShapeRef['bounds'];
	crownHeight_mm: number;
}

/** Height and turning diameter of a box about its centre: what a view must hold at any yaw. */
export const extents = (
	bounds: ShapeRef['bounds'],
): { height_mm: number; diameter_mm: number; radius_mm: number } => {
	const [x, y, z] = [0, 1, 2].map((i) => Math.max(0, bounds.max[i] - bounds.min[i]));
	return { height_mm: y, diameter_mm: Math.hypot(x, z), radius_mm: Math.hypot(x, y, z) / 2 };
};

/** Largest px per mm at which this tooth, upright and at any yaw, stays inside its view's margin. */
export const pxPerMmToFit = ({ width_px, height_px, bounds }: FitInput): number => {
	const { height_mm, diameter_mm } = extents(bounds);
	const room = 1 - 2 * MARGIN;
	return Math.min(
		(width_px * room) / Math.max(diameter_mm, 1e-6),
		(height_px * room) / Math.max(height_mm, 1e-6),
	);
};

/**
 * px per mm of each view at zoom 1; null stays null (an empty view).
 * same-scale: one value for all, the largest tooth fits. same-height: crowns equally tall, all fit.
 * each-fits: every one as large as its own view allows.
 * life-size: `lifePxPerMm` for all, fit or not; without it as same-scale.
 */
export const fitViews = (
	views: readonly (FitInput | null)[],
	mode: ScaleMode,
	lifePxPerMm: number | null = null,
): (number | null)[] => {
	const shown = views.filter((v): v is FitInput => v !== null && v.width_px > 0 && v.height_px > 0);
	const fits = (v: FitInput | null): v is FitInput => v !== null && shown.includes(v);
	if (mode === 'life-size' && lifePxPerMm !== null) return views.map((v) => (fits(v) ? lifePxPerMm : null));
	if (mode === 'each-fits') return views.map((v) => (fits(v) ? pxPerMmToFit(v) : null));
	if (mode !== 'same-height') {
		const common = Math.min(...shown.map(pxPerMmToFit));
		return views.map((v) => (fits(v) ? common : null));
	}
	const crown_px = Math.min(...shown.map((v) => pxPerMmToFit(v) * v.crownHeight_mm));
	return views.map((v) => (fits(v) ? crown_px / v.crownHeight_mm : null));
};
