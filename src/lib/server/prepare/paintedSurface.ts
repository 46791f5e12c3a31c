import type { TriMesh } from '../../domain/mesh/triMesh';
import { weldWithMap } from '../../domain/mesh/weld';
import { decoded, encoded } from '../scan/paint';
import type { Scan } from '../scan/readScan';
import { sampleSkin } from '../scan/sampleSkin';

/** A surface with pictures on it is cut finer until it has about this many triangles: the more, the sharper its colours. */
const ENOUGH_TRIANGLES = 60_000;
/** A difference that no eye sees, 0 .. 255: such a surface has one colour only, that of the program that saved it. */
const ONE_COLOUR = 3;

export interface PaintedSurface {
	/** welded, in the frame of the scan's mesh */
	mesh: TriMesh;
	/** red, green, blue per vertex, 0 .. 255 in the sRGB curve */
	colours: Uint8Array;
}

/**
 * A scan's surface with its own colour at each vertex; null where it has none. Colours of corners at one place
 * are averaged.
 *
 * Why colours of vertices and not pictures for the screen: several materials and their seams become one surface
 * that can be welded, closed, thinned and cut like any other; nothing of an unknown picture reaches the visitor's
 * browser; and the graphics memory does not grow. Where triangles are larger than the picture's detail they are
 * quartered first, and thinning keeps the vertices at which colour changes.
 */
export function paintedSurface({
	mesh,
	colours,
	paint,
}: Pick<Scan, 'mesh' | 'colours' | 'paint'>): PaintedSurface | null {
	if (!colours && !paint) return null;
	let surface: Corners = { ...mesh, uv: paint?.uv, skin: paint?.skin, tint: colours };
	// a quarter is worth nothing where there is no picture to see more of
	while (paint && (surface.indices.length / 3) * 4 <= ENOUGH_TRIANGLES * 2) surface = quartered(surface);
	const seen = cornerColours(surface, paint?.skins ?? []);
	if (spread(seen) <= ONE_COLOUR) return null;
	const welded = weldWithMap({ positions: surface.positions, indices: surface.indices });
	const vertices = welded.mesh.positions.length / 3;
	const sum = new Float64Array(vertices * 3);
	const count = new Uint32Array(vertices);
	welded.to.forEach((vertex, corner) => {
		if (vertex < 0) return;
		count[vertex]++;
		for (let k = 0; k < 3; k++) sum[vertex * 3 + k] += seen[corner * 3 + k];
	});
	return {
		mesh: welded.mesh,
		colours: Uint8Array.from(sum, (value, i) => Math.round(value / Math.max(1, count[Math.floor(i / 3)]))),
	};
}

interface Corners {
	positions: Float32Array;
	indices: Uint32Array;
	uv?: Float32Array;
	skin?: Uint16Array;
	tint?: Uint8Array;
}

function cornerColours(
	{ positions, uv, skin, tint }: Corners,
	skins: NonNullable<Scan['paint']>['skins'],
): Float32Array {
	const corners = positions.length / 3;
	const seen = new Float32Array(corners * 3);
	for (let i = 0; i < corners; i++) {
		const number = skin ? skin[i] : 0;
		if (uv && number > 0) sampleSkin(skins[number - 1], uv[i * 2], uv[i * 2 + 1], seen, i * 3);
		for (let k = i * 3; k < i * 3 + 3; k++) {
			if (!uv || number === 0) seen[k] = tint ? tint[k] : 255;
			else if (tint && tint[k] < 255) seen[k] = encoded(decoded(seen[k]) * decoded(tint[k]));
		}
	}
	return seen;
}

/** Largest difference within one of the three colours. */
function spread(seen: Float32Array): number {
	const low = [Infinity, Infinity, Infinity];
	const high = [-Infinity, -Infinity, -Infinity];
	for (let i = 0; i < seen.length; i++) {
		low[i % 3] = Math.min(low[i % 3], seen[i]);
		high[i % 3] = Math.max(high[i % 3], seen[i]);
	}
	return Math.max(...high.map((value, k) => value - low[k]));
}

/** Cuts each triangle into four along lines between the middles of its sides; all of them, so that no gap opens. */
function quartered({ positions, indices, uv, skin, tint }: Corners): Corners {
	const corners = positions.length / 3;
	const middles = new Map<number, number>();
	const ends: number[] = [];
	const middle = (a: number, b: number): number => {
		const key = Math.min(a, b) * corners + Math.max(a, b);
		let vertex = middles.get(key);
		if (vertex === undefined) {
			vertex = corners + ends.length / 2;
			middles.set(key, vertex);
			ends.push(a, b);
		}
		return vertex;
	};
	const out = new Uint32Array(indices.length * 4);
	for (let k = 0; k < indices.length; k += 3) {
		const [a, b, c] = [indices[k], indices[k + 1], indices[k + 2]];
		const [ab, bc, ca] = [middle(a, b), middle(b, c), middle(c, a)];
		out.set([a, ab, ca, ab, b, bc, ca, bc, c, ab, bc, ca], k * 4);
	}
	const count = corners + ends.length / 2;
	function grown<A extends Float32Array | Uint8Array | Uint16Array>(from: A, to: A, width: number): A {
		to.set(from);
		for (let i = 0; i < ends.length; i += 2) {
			for (let c = 0; c < width; c++) {
				const [a, b] = [from[ends[i] * width + c], from[ends[i + 1] * width + c]];
				to[(corners + i / 2) * width + c] = (a + b) / 2;
			}
		}
		return to;
	}
	const finer: Corners = {
		positions: grown(positions, new Float32Array(count * 3), 3),
		indices: out,
	};
	if (uv) finer.uv = grown(uv, new Float32Array(count * 2), 2);
	if (tint) finer.tint = grown(tint, new Uint8Array(count * 3), 3);
	if (skin) {
		finer.skin = new Uint16Array(count);
		finer.skin.set(skin);
		// both ends belong to one part of the file, and so to one picture
		for (let i = 0; i < ends.length; i += 2) finer.skin[corners + i / 2] = skin[ends[i]];
	}
	return finer;
}
