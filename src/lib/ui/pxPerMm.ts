/**
 * Pixels per millimetre of a screen, from its resolution and its diagonal in inches (square pixels).
 * Throws for a screen without extent: the content check has refused it before.
 */
export function pxPerMm(screen: { diagonal_in: number; width_px: number; height_px: number }): number {
	const { diagonal_in, width_px, height_px } = screen;
	if (!(diagonal_in > 0 && width_px > 0 && height_px > 0))
		throw new RangeError('pxPerMm: the screen has no extent');
	return Math.hypot(width_px, height_px) / (diagonal_in * 25.4);
}
