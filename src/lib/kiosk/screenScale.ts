/**
 * How large a millimetre is on one screen, told once by staff who lay something of known size on the glass.
 * Kept in pixels of the screen itself, so that the browser's own zoom does not spoil it.
 */

/** An ID-1 card: bank cards, many identity cards. ISO/IEC 7810:2019, nominal size. */
export const CARD_mm = { width: 85.6, height: 53.98, corner: 3.18 } as const;

/** What the glass may be: device px per mm of a 98-inch HD screen (0.88) and of a dense phone (25), with room. */
export const LIKELY_px_per_mm = { least: 0.6, most: 30 } as const;

/** Shortest thing worth laying on the glass: one pixel more or less is then under 1 % on any likely screen. */
export const SHORTEST_mm = 50;

/** The screen as the browser tells it; sizes in CSS px. */
export interface ScreenSeen {
	width: number;
	height: number;
	/** device px per CSS px */
	ratio: number;
}

export interface ScreenScale {
	devicePxPerMm: number;
	/** the screen that this holds for, device px, the longer side first: turning it changes nothing */
	longer_px: number;
	shorter_px: number;
}

const sides = ({ width, height, ratio }: ScreenSeen): [number, number] => [
	Math.round(Math.max(width, height) * ratio),
	Math.round(Math.min(width, height) * ratio),
];

/** The scale from something drawn `drawn_px` CSS px long that covers `length_mm` on the glass; null when no screen is like that. */
export function screenScale(drawn_px: number, length_mm: number, seen: ScreenSeen): ScreenScale | null {
	if (!(length_mm >= SHORTEST_mm) || !Number.isFinite(length_mm)) return null;
	const devicePxPerMm = (drawn_px * seen.ratio) / length_mm;
	const likely = devicePxPerMm >= LIKELY_px_per_mm.least && devicePxPerMm <= LIKELY_px_per_mm.most;
	if (!likely) return null;
	const [longer_px, shorter_px] = sides(seen);
	return { devicePxPerMm, longer_px, shorter_px };
}

/** CSS px per mm on the screen seen now; null when the scale was told on another screen. */
export function cssPxPerMm(scale: ScreenScale, seen: ScreenSeen): number | null {
	const [longer, shorter] = sides(seen);
	// zoom rounds the screen's size to whole CSS px
	const near = (a: number, b: number) => Math.abs(a - b) <= 2 * Math.max(1, seen.ratio);
	if (!near(longer, scale.longer_px) || !near(shorter, scale.shorter_px)) return null;
	return scale.devicePxPerMm / seen.ratio;
}

/** What was kept as JSON; null for anything else. */
export function readScreenScale(kept: string | null): ScreenScale | null {
	if (!kept) return null;
	let value: unknown;
	try {
		value = JSON.parse(kept);
	} catch {
		return null;
	}
	if (typeof value !== 'object' || value === null) return null;
	const { devicePxPerMm, longer_px, shorter_px } = value as Partial<Record<keyof ScreenScale, unknown>>;
	const numbers = [devicePxPerMm, longer_px, shorter_px];
	if (!numbers.every((n): n is number => typeof n === 'number' && Number.isFinite(n) && n > 0)) return null;
	const [density, longer, shorter] = numbers as [number, number, number];
	if (density < LIKELY_px_per_mm.least || density > LIKELY_px_per_mm.most) return null;
	return { devicePxPerMm: density, longer_px: longer, shorter_px: shorter };
}
