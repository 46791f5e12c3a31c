import type { Vec3 } from '../domain/vec3';

type Colour = readonly [red: number, green: number, blue: number];

const ENAMEL: Colour = [44, 38, 35];
const BROWN: Colour = [98, 66, 42];
const RUST: Colour = [139, 84, 44];
const POLISHED: Colour = [104, 82, 62];
const STUMP: Colour = [150, 124, 92];
const STUMP_DARK: Colour = [92, 72, 54];

/**
 * Invented colours of a black fossil crown on a short stump, for a place in the tooth frame, mm: dark enamel with brown
 * clouds and rusty streaks, faint rings, a paler worn tip, and a stump the colour of clay. 0 .. 255, sRGB.
 */
export function demoColours([x, y, z]: Vec3, crownHeight_mm: number): [number, number, number] {
	const clouds = noise(x * 0.28, y * 0.16, z * 0.28);
	const specks = noise(x * 1.3 + 40, y * 1.1, z * 1.3);
	if (y < 0) return mixed(STUMP, STUMP_DARK, step(0.35, 0.7, clouds * 0.6 + specks * 0.4));
	let colour = mixed(ENAMEL, BROWN, 0.8 * step(0.45, 0.75, clouds));
	// streaks run along the crown
	colour = mixed(colour, RUST, 0.7 * step(0.66, 0.82, noise(x * 0.9, y * 0.09 + 9, z * 0.9)));
	const ring = 1 + 0.1 * Math.sin((2 * Math.PI * y) / 2.3 + 2 * clouds);
	colour = mixed(colour, POLISHED, step(0.86, 0.99, y / crownHeight_mm + 0.06 * (specks - 0.5)));
	colour = mixed(colour, STUMP, 0.75 * step(1.6, 0.2, y + 1.2 * (clouds - 0.5)));
	return colour.map((value) => Math.round(value * ring * (0.92 + 0.16 * specks))) as [number, number, number];
}

const mixed = (from: Colour, to: Colour, share: number): [number, number, number] => [
	from[0] + (to[0] - from[0]) * share,
	from[1] + (to[1] - from[1]) * share,
	from[2] + (to[2] - from[2]) * share,
];

/** 0 before `from`, 1 after `to`, smooth between. */
function step(from: number, to: number, value: number): number {
	const t = Math.min(1, Math.max(0, (value - from) / (to - from)));
	return t * t * (3 - 2 * t);
}

/** Smooth noise, 0 .. 1; one cloud per unit of length. */
function noise(x: number, y: number, z: number): number {
	const [i, j, k] = [Math.floor(x), Math.floor(y), Math.floor(z)];
	const smooth = (t: number): number => t * t * (3 - 2 * t);
	const [u, v, w] = [smooth(x - i), smooth(y - j), smooth(z - k)];
	let sum = 0;
	for (let corner = 0; corner < 8; corner++) {
		const [a, b, c] = [corner & 1, (corner >> 1) & 1, corner >> 2];
		sum += lattice(i + a, j + b, k + c) * (a ? u : 1 - u) * (b ? v : 1 - v) * (c ? w : 1 - w);
	}
	return sum;
}

/** The same value from 0 to 1 for the same three whole numbers. */
function lattice(x: number, y: number, z: number): number {
	let h = Math.imul(x, 0x27d4eb2d) ^ Math.imul(y, 0x165667b1) ^ Math.imul(z, 0x9e3779b1);
	h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
	h = Math.imul(h ^ (h >>> 12), 0x297a2d39);
	return ((h ^ (h >>> 15)) >>> 0) / 2 ** 32;
}
