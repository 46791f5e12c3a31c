import type { Skin, Wrap } from './paint';

/**
 * Colour of a skin at (u, v), mixed from the four pixels round it (pixel centres lie at half numbers), 0 .. 255 in
 * the sRGB curve, written to `out` from `at` on. A place that is no number gets the first pixel.
 */
export function sampleSkin(skin: Skin, u: number, v: number, out: Float32Array, at: number): void {
	const { width, height, pixels } = skin;
	const x = (Number.isFinite(u) ? u : 0) * width - 0.5;
	const y = (Number.isFinite(v) ? v : 0) * height - 0.5;
	const [left, top] = [Math.floor(x), Math.floor(y)];
	const [right, low] = [x - left, y - top];
	const columns = [place(left, width, skin.wrap[0]), place(left + 1, width, skin.wrap[0])];
	const rows = [place(top, height, skin.wrap[1]), place(top + 1, height, skin.wrap[1])];
	const [a, b, c, d] = [
		(rows[0] * width + columns[0]) * 3,
		(rows[0] * width + columns[1]) * 3,
		(rows[1] * width + columns[0]) * 3,
		(rows[1] * width + columns[1]) * 3,
	];
	for (let k = 0; k < 3; k++) {
		const above = pixels[a + k] + (pixels[b + k] - pixels[a + k]) * right;
		const below = pixels[c + k] + (pixels[d + k] - pixels[c + k]) * right;
		out[at + k] = above + (below - above) * low;
	}
}

/** The pixel that stands for number `i` of a row of `size`. */
function place(i: number, size: number, wrap: Wrap): number {
	if (wrap === 'clamp') return Math.min(size - 1, Math.max(0, i));
	const period = wrap === 'repeat' ? size : size * 2;
	const inside = ((i % period) + period) % period;
	return inside < size ? inside : period - 1 - inside;
}
