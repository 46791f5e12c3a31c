/** Natural unevenness of colour, baked per vertex so that it costs nothing to draw and never shimmers. */
import { regionIndex } from '../domain/mesh/triMesh';

/** Repeatable value in 0 .. 1 at a lattice point. */
const lattice = (x: number, y: number, z: number): number => {
	let h = (Math.imul(x, 374761393) + Math.imul(y, 668265263) + Math.imul(z, 2147483647 ^ 1274126177)) | 0;
	h = Math.imul(h ^ (h >>> 13), 1274126177);
	return ((h ^ (h >>> 16)) >>> 0) / 4294967295;
};

const smooth = (t: number) => t * t * (3 - 2 * t);
const mix = (a: number, b: number, t: number) => a + (b - a) * t;

/** Smooth value noise, 0 .. 1; one feature per unit of length. */
export const valueNoise = (x: number, y: number, z: number): number => {
	const [xi, yi, zi] = [Math.floor(x), Math.floor(y), Math.floor(z)];
	const [u, v, w] = [smooth(x - xi), smooth(y - yi), smooth(z - zi)];
	const layer = (dz: number) =>
		mix(
			mix(lattice(xi, yi, zi + dz), lattice(xi + 1, yi, zi + dz), u),
			mix(lattice(xi, yi + 1, zi + dz), lattice(xi + 1, yi + 1, zi + dz), u),
			v,
		);
	return mix(layer(0), layer(1), w);
};

/**
 * Fills byte 1 of each vertex's four `surface` bytes; 128 = the palette's own colour.
 * Enamel gets wide soft clouds, the root fibres that run along it (stretched noise), pits and pulp a grain.
 * Scale follows the tooth's size, so that a small and a large tooth are equally lively.
 */
export const surfaceTone = (positions: Float32Array, surface: Uint8Array): void => {
	let low = Infinity;
	let high = -Infinity;
	for (let i = 1; i < positions.length; i += 3) {
		low = Math.min(low, positions[i]);
		high = Math.max(high, positions[i]);
	}
	const unit = Math.max(1e-6, high - low) / 10;
	const rootFrom = regionIndex('root');
	for (let i = 0; i < surface.length / 4; i++) {
		const x = positions[i * 3] / unit;
		const y = positions[i * 3 + 1] / unit;
		const z = positions[i * 3 + 2] / unit;
		const clouds =
			valueNoise(x * 1.1 + 7, y * 0.7, z * 1.1) * 0.65 + valueNoise(x * 2.7, y * 1.6 + 3, z * 2.7) * 0.35;
		let tone = 0.5 + (clouds - 0.5) * 0.8;
		if (surface[i * 4 + 2] >= rootFrom) {
			const fibres = valueNoise(x * 7, y * 0.8, z * 7) * 0.6 + valueNoise(x * 16, y * 1.7, z * 16) * 0.4;
			tone += (fibres - 0.5) * 0.4;
		}
		surface[i * 4 + 1] = Math.round(255 * Math.min(1, Math.max(0, tone)));
	}
};
