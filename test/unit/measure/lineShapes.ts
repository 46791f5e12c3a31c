import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';

/** Closed crowns whose sections are known curves, for ridges, edges, outlines and facets. */

/** Radius of a section of mean radius about 1 in a direction, at a fraction of the height. */
export type Outline = (angle_rad: number, at: number) => readonly [number, number];

export const ellipse =
	(ratio: number): Outline =>
	(a) => [Math.cos(a), ratio * Math.sin(a)];

/** Superellipse of power 2.4. */
export const squaredEllipse =
	(ratio: number): Outline =>
	(a) => {
		const [c, s] = [Math.cos(a), Math.sin(a)];
		const r = (Math.abs(c) ** 2.4 + Math.abs(s) ** 2.4) ** (-1 / 2.4);
		return [r * c, ratio * r * s];
	};

/** Lens of two parabolas, sharp at its ends. */
export const lens =
	(ratio: number): Outline =>
	(a) => {
		const x = Math.cos(a);
		return [x, Math.sign(Math.sin(a)) * ratio * (1 - x * x)];
	};

/** Straight sides between the corners of a regular polygon, stretched across by `ratio`. */
export const polygon =
	(corners: number, ratio = 1): Outline =>
	(a) => {
		const step = (2 * Math.PI) / corners;
		const turn = ((a % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
		const off = (turn % step) - step / 2;
		const r = Math.cos(step / 2) / Math.cos(off);
		return [r * Math.cos(a), ratio * r * Math.sin(a)];
	};

/** Half-round with one flat face (towards +z) at 0.4 of its radius, its corners rounded. */
export const halfRound: Outline = (a) => {
	const r = (1 + Math.max(0, Math.sin(a) / 0.4) ** 9) ** (-1 / 9);
	return [r * Math.cos(a), r * Math.sin(a)];
};

/** Ridges as a wave round the section, crest over hollow by `height` (of the radius), between two fractions of the crown's height. */
export const fluted =
	(body: Outline, count: number, height: number, from = -1, to = 2): Outline =>
	(a, at) => {
		const [x, z] = body(a, at);
		const within = at >= from && at <= to ? 1 : 0;
		const k = 1 + (within * height * Math.cos(count * a)) / 2;
		return [k * x, k * z];
	};

/**
 * Straight crown on the plane y = 0, closed; its sections are `outline` times a radius that falls from `radius` to 0.
 * 40,000 triangles and more by default.
 */
export function crownOf(
	outline: Outline,
	{ radius = 10, height = 40, around = 240, up = 90, lean = 0.1 } = {},
): TriMesh {
	const positions: number[] = [];
	const indices: number[] = [];
	for (let i = 0; i < up; i++) {
		const at = i / up;
		for (let j = 0; j < around; j++) {
			const [x, z] = outline((2 * Math.PI * j) / around, at);
			positions.push(radius * ((1 - at) * x + lean * at), height * at, radius * (1 - at) * z);
		}
	}
	const bottom = positions.length / 3;
	positions.push(0, 0, 0, radius * lean, height, 0);
	for (let j = 0; j < around; j++) {
		const next = (j + 1) % around;
		for (let i = 0; i + 1 < up; i++) {
			const [a, b, c, d] = [i * around + j, i * around + next, (i + 1) * around + j, (i + 1) * around + next];
			indices.push(a, c, b, b, c, d);
		}
		indices.push(bottom, j, next);
		indices.push(bottom + 1, (up - 1) * around + next, (up - 1) * around + j);
	}
	return { positions: Float32Array.from(positions), indices: Uint32Array.from(indices) };
}

/** Normally distributed noise on every coordinate, the same for a seed. */
export function noisy(mesh: TriMesh, deviation_mm: number, seed = 1): TriMesh {
	let state = seed >>> 0 || 1;
	const random = (): number => {
		state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
		return (state + 1) / (2 ** 32 + 1);
	};
	const normal = (): number => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
	return { ...mesh, positions: mesh.positions.map((x) => x + deviation_mm * normal()) };
}
