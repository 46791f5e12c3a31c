import { shadeEnamel, WORKBENCH_LIGHTS, type Lights } from './enamelLight';
import { normals, type ShadedMesh } from './normals';
import type { Rows } from './orient';
import { shadowMap, type ShadowMap } from './shadowMap';
import { REGIONS, type Region, type TriMesh } from './triMesh';

export interface RasteriseOptions {
	/** picture size, px */
	width: number;
	height: number;
	/** turned about the long axis, then tipped towards the viewer; 0, 0 looks at the labial side */
	view: { yaw_deg: number; tilt_deg: number };
	/** free border, share of the shorter side; default 0.06 */
	margin?: number;
	/** sRGB 0 .. 1 per region */
	colours: Readonly<Record<Region, readonly [number, number, number]>>;
	lights?: Lights;
	/** the surface's own colours instead: sRGB 0 .. 255 per vertex of the mesh */
	vertexColours?: Uint8Array;
	/** per vertex of the mesh, from `occlusion` */
	occlusion?: Float32Array;
	/** samples a side for each pixel; default 3 */
	samples?: number;
	crease_deg?: number;
}

/** How matt each region is. */
const ROUGHNESS: Readonly<Record<Region, number>> = {
	enamel: 0.26,
	carina: 0.24,
	ridge: 0.26,
	facet: 0.34,
	dentine: 0.6,
	root: 0.72,
	pit: 0.8,
	pulp: 0.85,
};

/**
 * Picture of a mesh in the tooth frame, drawn without a graphics card: RGBA, 4 bytes per pixel, rows from the top,
 * transparent where there is no tooth, colours not premultiplied. The tooth fills the picture inside the margin,
 * in parallel projection. The mesh must be welded.
 */
export function rasterise(mesh: TriMesh, options: RasteriseOptions): Uint8ClampedArray {
	const { width, height, view } = options;
	const samples = options.samples ?? 3;
	const shaded = normals(mesh, { crease_deg: options.crease_deg });
	const rows = viewRows(view.yaw_deg, view.tilt_deg);
	const turned = turn(shaded, rows);
	fitToPicture(turned.points, width * samples, height * samples, options.margin ?? 0.06);
	const lights = options.lights ?? WORKBENCH_LIGHTS;
	const shadow = shadowMap(turned.points, shaded.indices, lights.key.towards);
	const frame = draw(turned.points, shaded.indices, width * samples, height * samples);
	return resolve(frame, shaded, turned, shadow, options, samples, lights);
}

/** Rows of the rotation that brings the tooth frame before the viewer. */
export function viewRows(yaw_deg: number, tilt_deg: number): Rows {
	const cy = Math.cos((yaw_deg * Math.PI) / 180);
	const sy = Math.sin((yaw_deg * Math.PI) / 180);
	const ct = Math.cos((tilt_deg * Math.PI) / 180);
	const st = Math.sin((tilt_deg * Math.PI) / 180);
	return [
		[cy, 0, sy],
		[sy * st, ct, -cy * st],
		[-sy * ct, st, cy * ct],
	];
}

interface Turned {
	points: Float32Array;
	normals: Float32Array;
}

function turn(shaded: ShadedMesh, rows: Rows): Turned {
	const apply = (source: Float32Array): Float32Array => {
		const out = new Float32Array(source.length);
		for (let i = 0; i < source.length; i += 3) {
			for (let k = 0; k < 3; k++) {
				out[i + k] = rows[k][0] * source[i] + rows[k][1] * source[i + 1] + rows[k][2] * source[i + 2];
			}
		}
		return out;
	};
	return { points: apply(shaded.positions), normals: apply(shaded.normals) };
}

/** Scales to samples, x to the right, y down, z to the viewer, in place. */
function fitToPicture(points: Float32Array, width: number, height: number, margin: number): void {
	let x0 = Infinity;
	let x1 = -Infinity;
	let y0 = Infinity;
	let y1 = -Infinity;
	for (let i = 0; i < points.length; i += 3) {
		x0 = Math.min(x0, points[i]);
		x1 = Math.max(x1, points[i]);
		y0 = Math.min(y0, points[i + 1]);
		y1 = Math.max(y1, points[i + 1]);
	}
	const border = margin * Math.min(width, height);
	const scale = Math.min(
		(width - 2 * border) / Math.max(1e-9, x1 - x0),
		(height - 2 * border) / Math.max(1e-9, y1 - y0),
	);
	for (let i = 0; i < points.length; i += 3) {
		points[i] = (points[i] - (x0 + x1) / 2) * scale + width / 2;
		points[i + 1] = height / 2 - (points[i + 1] - (y0 + y1) / 2) * scale;
		points[i + 2] *= scale;
	}
}

interface Frame {
	/** triangle number per sample, -1 where nothing was drawn */
	triangle: Int32Array;
	depth: Float32Array;
	/** weights of the second and third corner */
	second: Float32Array;
	third: Float32Array;
}

function draw(points: Float32Array, indices: Uint32Array, width: number, height: number): Frame {
	const size = width * height;
	const frame: Frame = {
		triangle: new Int32Array(size).fill(-1),
		depth: new Float32Array(size).fill(-Infinity),
		second: new Float32Array(size),
		third: new Float32Array(size),
	};
	for (let k = 0; k < indices.length; k += 3) {
		const a = indices[k] * 3;
		const b = indices[k + 1] * 3;
		const c = indices[k + 2] * 3;
		const ax = points[a];
		const ay = points[a + 1];
		const bx = points[b] - ax;
		const by = points[b + 1] - ay;
		const cx = points[c] - ax;
		const cy = points[c + 1] - ay;
		const area = bx * cy - by * cx;
		if (area === 0) continue;
		const x0 = Math.max(0, Math.ceil(ax + Math.min(0, bx, cx) - 0.5));
		const x1 = Math.min(width - 1, Math.floor(ax + Math.max(0, bx, cx) - 0.5));
		const y0 = Math.max(0, Math.ceil(ay + Math.min(0, by, cy) - 0.5));
		const y1 = Math.min(height - 1, Math.floor(ay + Math.max(0, by, cy) - 0.5));
		const az = points[a + 2];
		const bz = points[b + 2] - az;
		const cz = points[c + 2] - az;
		for (let y = y0; y <= y1; y++) {
			for (let x = x0; x <= x1; x++) {
				const px = x + 0.5 - ax;
				const py = y + 0.5 - ay;
				const wb = (px * cy - py * cx) / area;
				const wc = (py * bx - px * by) / area;
				if (wb < -1e-6 || wc < -1e-6 || wb + wc > 1.000001) continue;
				const z = az + wb * bz + wc * cz;
				const at = y * width + x;
				if (z <= frame.depth[at]) continue;
				frame.depth[at] = z;
				frame.triangle[at] = k / 3;
				frame.second[at] = wb;
				frame.third[at] = wc;
			}
		}
	}
	return frame;
}

function resolve(
	frame: Frame,
	shaded: ShadedMesh,
	turned: Turned,
	shadow: ShadowMap,
	options: RasteriseOptions,
	samples: number,
	lights: Lights,
): Uint8ClampedArray {
	const { width, height, occlusion } = options;
	const { indices, regions, source } = shaded;
	const albedos = REGIONS.map((region) => Float64Array.from(options.colours[region], toLinear));
	const roughnesses = REGIONS.map((region) => ROUGHNESS[region]);
	const own =
		options.vertexColours && Float64Array.from(options.vertexColours, (value) => toLinear(value / 255));
	const albedo = new Float64Array(3);
	const out = new Uint8ClampedArray(width * height * 4);
	const n = new Float64Array(3);
	const colour = new Float64Array(3);
	const sum = new Float64Array(3);
	for (let y = 0; y < height; y++) {
		for (let x = 0; x < width; x++) {
			let hits = 0;
			sum.fill(0);
			for (let s = 0; s < samples * samples; s++) {
				const at = (y * samples + Math.floor(s / samples)) * width * samples + x * samples + (s % samples);
				const triangle = frame.triangle[at];
				if (triangle < 0) continue;
				hits++;
				const a = indices[triangle * 3];
				const b = indices[triangle * 3 + 1];
				const c = indices[triangle * 3 + 2];
				const wb = frame.second[at];
				const wc = frame.third[at];
				const wa = 1 - wb - wc;
				let length = 0;
				for (let k = 0; k < 3; k++) {
					n[k] =
						wa * turned.normals[a * 3 + k] + wb * turned.normals[b * 3 + k] + wc * turned.normals[c * 3 + k];
					length += n[k] * n[k];
				}
				// the inner side of an open mesh is seen from behind
				length = Math.sqrt(length) * (n[2] < -0.2 ? -1 : 1) || 1;
				n[0] /= length;
				n[1] /= length;
				n[2] /= length;
				const open = occlusion
					? wa * occlusion[source[a]] + wb * occlusion[source[b]] + wc * occlusion[source[c]]
					: 1;
				// asked a little above the surface, so that it does not shade itself where the lamp grazes it
				const lift = 3.5 * shadow.cell;
				const lit = shadow.lit(
					x * samples + (s % samples) + 0.5 + n[0] * lift,
					y * samples + Math.floor(s / samples) + 0.5 - n[1] * lift,
					frame.depth[at] + n[2] * lift,
				);
				const region = regions[a];
				if (own) {
					const [i, j, l] = [source[a] * 3, source[b] * 3, source[c] * 3];
					for (let k = 0; k < 3; k++) albedo[k] = wa * own[i + k] + wb * own[j + k] + wc * own[l + k];
				}
				shadeEnamel(n, own ? albedo : albedos[region], roughnesses[region], open, lit, lights, colour);
				// the tone curve comes before averaging: a hard highlight's edge stays smooth
				for (let k = 0; k < 3; k++) sum[k] += toneCurve(colour[k]);
			}
			if (hits === 0) continue;
			const to = (y * width + x) * 4;
			for (let k = 0; k < 3; k++) out[to + k] = 255 * fromLinear(sum[k] / hits);
			out[to + 3] = (255 * hits) / (samples * samples);
		}
	}
	return out;
}

/** Rolls bright values off towards 1 instead of clipping them. */
function toneCurve(x: number): number {
	return x < 0.55 ? x : 1 - 0.45 * Math.exp(-(x - 0.55) / 0.45);
}

function toLinear(c: number): number {
	return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
}

function fromLinear(c: number): number {
	return c <= 0.0031308 ? c * 12.92 : 1.055 * c ** (1 / 2.4) - 0.055;
}
