/** A picture that colours a surface: rows from the top, red, green and blue per pixel, 0 .. 255 in the sRGB curve. */
export interface Picture {
	width: number;
	height: number;
	pixels: Uint8Array;
}

/** What lies beyond a picture's edge: glTF 2.0 specification, 3.8.4.5. */
export type Wrap = 'repeat' | 'mirror' | 'clamp';

export interface Skin extends Picture {
	/** across and down */
	wrap: readonly [Wrap, Wrap];
}

/** Pictures on a surface. A corner's own colour, where there is one, multiplies the picture's. */
export interface Paint {
	/** across and down per corner, 0 .. 1 over the picture, from its top left */
	uv: Float32Array;
	/** number of the skin + 1 per corner; 0 for none */
	skin: Uint16Array;
	skins: readonly Skin[];
}

/** Linear light to the sRGB curve (IEC 61966-2-1), 0 .. 255, not rounded. */
export function encoded(linear: number): number {
	const light = Math.min(1, Math.max(0, linear));
	return 255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055);
}

/** The way back from 0 .. 255. */
export function decoded(value: number): number {
	const share = value / 255;
	return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}
