/**
 * Contrast ratio of two sRGB colours written #rrggbb, 1 .. 21.
 * Source: WCAG 2.2, definitions of relative luminance and contrast ratio (linearised at 0.04045).
 * Throws for another notation: colours are ours, so that is a programmer's error.
 */
export function contrast(a: string, b: string): number {
	const [lighter, darker] = [luminance(a), luminance(b)].sort((x, y) => y - x);
	return (lighter + 0.05) / (darker + 0.05);
}

function luminance(colour: string): number {
	const match = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(colour);
	if (!match) throw new RangeError(`contrast: "${colour}" is not written #rrggbb`);
	const [r, g, b] = match.slice(1).map((hex) => {
		const value = Number.parseInt(hex, 16) / 255;
		return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
	});
	return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
