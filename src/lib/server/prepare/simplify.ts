import { MeshoptSimplifier } from 'meshoptimizer';

/** A surface whose vertices hold their normal and region; vertices on a border or crease stand there more than once. */
export interface Surface {
	positions: Float32Array;
	normals: Float32Array;
	/** index into REGIONS per vertex */
	regions: Uint8Array;
	/** the scan's own colour: red, green, blue per vertex, 0 .. 255 */
	colours?: Uint8Array;
	indices: Uint32Array;
}

/** Most triangles of the full level. */
export const FULL_TRIANGLES = 24_000;
/** Most where relief and borders need them: serrated edges. */
export const FULL_TRIANGLES_SERRATED = 40_000;
/** Most of a scan in its own colours, which are no finer than its corners. */
export const FULL_TRIANGLES_COLOURED = 60_000;
/** Aim of the light level. */
export const LIGHT_TRIANGLES = 3_500;

/** How much a turned normal counts against a moved surface: at rest relief is seen by its shading. */
const NORMAL_WEIGHT_FULL = 0.5;
/** In motion the silhouette is what may not jump. */
const NORMAL_WEIGHT_LIGHT = 0.15;
/** Colour that changes wholly counts as much as a normal that turns by 90 degrees and more. */
const COLOUR_WEIGHT = 1;

interface Attempt {
	triangles: number;
	/** farthest that the surface may move, share of the longest side */
	error: number;
	/** vertices on the borders between regions stay */
	lock: boolean;
	/** borders and creases may be closed */
	permissive?: boolean;
	/** taken when it comes out at most this big */
	most: number;
}

const FULL: readonly Attempt[] = [
	{ triangles: FULL_TRIANGLES, error: 0.0005, lock: true, most: FULL_TRIANGLES },
	{ triangles: FULL_TRIANGLES, error: 0.0005, lock: false, most: FULL_TRIANGLES },
	{ triangles: FULL_TRIANGLES_SERRATED, error: 0.003, lock: false, most: FULL_TRIANGLES_SERRATED },
	{ triangles: FULL_TRIANGLES_SERRATED, error: 0.02, lock: false, permissive: true, most: Infinity },
];
const COLOURED: readonly Attempt[] = [
	{ triangles: FULL_TRIANGLES_COLOURED, error: 0.02, lock: false, most: FULL_TRIANGLES_COLOURED },
	{ triangles: FULL_TRIANGLES_COLOURED, error: 0.02, lock: false, permissive: true, most: Infinity },
];
const LIGHT: readonly Attempt[] = [
	{ triangles: LIGHT_TRIANGLES, error: 0.0008, lock: false, most: LIGHT_TRIANGLES * 3 },
	{ triangles: LIGHT_TRIANGLES, error: 0.1, lock: false, permissive: true, most: Infinity },
];

/** The full level: as few triangles as keep silhouette, relief and the borders of regions. */
export const simplifyFull = (surface: Surface): Promise<Surface> =>
	simplify(surface, surface.colours ? COLOURED : FULL, NORMAL_WEIGHT_FULL);

/** The light level, for while things move. */
export const simplifyLight = (surface: Surface): Promise<Surface> =>
	simplify(surface, LIGHT, NORMAL_WEIGHT_LIGHT);

async function simplify(surface: Surface, attempts: readonly Attempt[], weight: number): Promise<Surface> {
	await MeshoptSimplifier.ready;
	if (surface.indices.length / 3 <= attempts[0].triangles) return surface;
	const border = regionBorders(surface);
	const { attributes, weights } = looks(surface, weight);
	let indices = surface.indices;
	for (const attempt of attempts) {
		[indices] = MeshoptSimplifier.simplifyWithAttributes(
			surface.indices,
			surface.positions,
			3,
			attributes,
			weights.length,
			weights,
			attempt.lock ? border : null,
			attempt.triangles * 3,
			attempt.error,
			attempt.permissive ? ['Permissive'] : [],
		);
		if (indices.length / 3 <= attempt.most) break;
	}
	return compact(surface, indices);
}

/** What a vertex looks like, besides its place, and how much each number counts. */
function looks(
	{ normals, colours }: Surface,
	weight: number,
): { attributes: Float32Array; weights: number[] } {
	const normal = [weight, weight, weight];
	if (!colours) return { attributes: normals, weights: normal };
	const attributes = new Float32Array(normals.length * 2);
	for (let i = 0; i < normals.length; i += 3) {
		for (let k = 0; k < 3; k++) {
			attributes[i * 2 + k] = normals[i + k];
			attributes[i * 2 + 3 + k] = colours[i + k] / 255;
		}
	}
	return { attributes, weights: [...normal, COLOUR_WEIGHT, COLOUR_WEIGHT, COLOUR_WEIGHT] };
}

/** 1 for each vertex at whose place another region begins. */
function regionBorders({ positions, regions }: Surface): Uint8Array {
	const remap = MeshoptSimplifier.generatePositionRemap(positions, 3);
	const border = new Uint8Array(regions.length);
	for (let i = 0; i < regions.length; i++) if (regions[i] !== regions[remap[i]]) border[remap[i]] = 1;
	for (let i = 0; i < regions.length; i++) border[i] = border[remap[i]];
	return border;
}

/** Drops the vertices that no triangle uses any more. */
function compact(surface: Surface, indices: Uint32Array): Surface {
	const order = indices.slice();
	const [remap, count] = MeshoptSimplifier.compactMesh(order);
	const positions = new Float32Array(count * 3);
	const normals = new Float32Array(count * 3);
	const regions = new Uint8Array(count);
	const colours = surface.colours && new Uint8Array(count * 3);
	for (let i = 0; i < remap.length; i++) {
		const to = remap[i];
		if (to >= count) continue; // unused
		positions.set(surface.positions.subarray(i * 3, i * 3 + 3), to * 3);
		normals.set(surface.normals.subarray(i * 3, i * 3 + 3), to * 3);
		regions[to] = surface.regions[i];
		if (colours) colours.set(surface.colours!.subarray(i * 3, i * 3 + 3), to * 3);
	}
	return { positions, normals, regions, ...(colours ? { colours } : {}), indices: order };
}
