import type { Vec3 } from '../vec3';

/** Colours here are linear light, not sRGB. */
export interface SceneLight {
	/** unit vector towards the light: x right, y up, z to the viewer */
	towards: Vec3;
	colour: Vec3;
}

export interface Lights {
	/** low from the upper left: brings out ridges */
	key: SceneLight;
	/** soft, from the right: keeps the dark side readable */
	fill: SceneLight;
	/** from behind: draws a bright edge */
	rim: SceneLight;
}

const unit = (x: number, y: number, z: number): Vec3 => {
	const n = Math.hypot(x, y, z);
	return [x / n, y / n, z / n];
};

export const WORKBENCH_LIGHTS: Lights = {
	key: { towards: unit(-0.74, 0.52, 0.4), colour: [2.3, 2.12, 1.86] },
	fill: { towards: unit(0.75, 0.12, 0.62), colour: [0.2, 0.24, 0.3] },
	rim: { towards: unit(0.72, 0.38, -0.58), colour: [1.1, 1.02, 0.92] },
};

/** Light from all round: overhead warm grey, felt below. */
const SKY: Vec3 = [0.2, 0.21, 0.23];
const GROUND: Vec3 = [0.06, 0.048, 0.04];
/** Reflection of enamel seen head-on, from its refractive index of about 1.63. */
const REFLECTANCE = 0.057;
/** Share of light that wraps past the terminator: enamel lets some through. */
const WRAP = 0.14;

/**
 * Light that leaves a point of the surface towards the viewer (who looks along -z).
 *
 * @param n unit normal
 * @param albedo linear colour of the surface
 * @param roughness 0 mirror .. 1 chalk
 * @param openness 0 .. 1, from `occlusion`
 * @param lit 0 .. 1, share of the key light that arrives (its shadow)
 * @param out receives the linear colour
 */
export function shadeEnamel(
	n: Vec3 | Float64Array,
	albedo: ArrayLike<number>,
	roughness: number,
	openness: number,
	lit: number,
	{ key, fill, rim }: Lights,
	out: Float64Array,
): void {
	const nx = n[0];
	const ny = n[1];
	const nz = Math.max(1e-3, n[2]);
	const fresnel = REFLECTANCE + (1 - REFLECTANCE) * (1 - nz) ** 5 * (1 - roughness * 0.75);
	const keyCos = nx * key.towards[0] + ny * key.towards[1] + n[2] * key.towards[2];
	const keyDiffuse = (Math.max(0, keyCos + WRAP) / (1 + WRAP)) * (0.12 + 0.88 * lit);
	const fillCos =
		Math.max(0, nx * fill.towards[0] + ny * fill.towards[1] + n[2] * fill.towards[2] + 0.2) / 1.2;
	const rimCos = Math.max(0, nx * rim.towards[0] + ny * rim.towards[1] + n[2] * rim.towards[2]);
	const up = 0.5 + 0.5 * ny;
	// what the surface mirrors: one soft lamp at the key, a pale wall at the left, dark felt elsewhere
	const rx = 2 * n[2] * nx;
	const ry = 2 * n[2] * ny;
	const rz = 2 * n[2] * n[2] - 1;
	const mirror = rx * key.towards[0] + ry * key.towards[1] + rz * key.towards[2];
	const gloss = 1 - roughness;
	const lamp =
		smooth(1 - 0.5 * roughness - 0.13, 1 - 0.25 * roughness * roughness, mirror) * gloss * gloss * 9 * lit;
	const sheen = smooth(-0.2, 1, mirror) ** 3 * 0.75 * gloss * (0.4 + 0.6 * lit);
	const wall = smooth(0.1, 0.9, ry) * 0.3 + 0.07;
	for (let k = 0; k < 3; k++) {
		const ambient = (GROUND[k] + (SKY[k] - GROUND[k]) * up) * openness;
		// light that has been inside the tooth comes out a little warmer in the creases
		const crease = openness + (1 - openness) * albedo[k] * 0.35;
		const diffuse =
			albedo[k] * (ambient + keyDiffuse * key.colour[k] * 0.5 * crease + fillCos * fill.colour[k] * openness);
		const edge = rimCos * rim.colour[k] * (1 - nz) ** 2 * (0.15 + fresnel) * 2.4 * openness;
		const specular = fresnel * (lamp + sheen + wall) * key.colour[k] * (0.35 + 0.65 * openness);
		out[k] = diffuse + edge + specular;
	}
}

function smooth(from: number, to: number, x: number): number {
	const t = Math.max(0, Math.min(1, (x - from) / (to - from)));
	return t * t * (3 - 2 * t);
}
