import { adjacency } from './adjacency';
import { regionIndex, type Region, type TriMesh } from './triMesh';

export interface NormalsOptions {
	/** edges between faces that turn by more than this stay sharp; default 40 degrees */
	crease_deg?: number;
	/** regions whose border is always sharp; default the flat ones, facet and dentine */
	sharpRegions?: readonly Region[];
}

/** A mesh ready for drawing: a vertex belongs to one region and has one normal. */
export interface ShadedMesh {
	/** 3 per vertex */
	positions: Float32Array;
	/** unit, 3 per vertex */
	normals: Float32Array;
	/** 3 per triangle, in the order of the mesh */
	indices: Uint32Array;
	/** index into REGIONS per vertex; all 0 when the mesh has no regions */
	regions: Uint8Array;
	/** number of the mesh's vertex that each vertex was made from */
	source: Uint32Array;
}

const DEFAULT_CREASE_DEG = 40;
const DEFAULT_SHARP: readonly Region[] = ['facet', 'dentine'];

/**
 * Vertex normals of a welded mesh, weighted by the corner's angle (Thuermer & Wuthrich 1998,
 * doi:10.1080/10867651.1998.10487487). Vertices are doubled where two regions meet, so that each carries one colour,
 * and where the surface has a crease, so that a facet keeps its edge. Across a region border without a crease
 * both copies share one normal: no seam shows.
 */
export function normals(mesh: TriMesh, options: NormalsOptions = {}): ShadedMesh {
	const { positions: p, indices, regions } = mesh;
	const corners = indices.length;
	const cosCrease = Math.cos(((options.crease_deg ?? DEFAULT_CREASE_DEG) * Math.PI) / 180);
	const sharp = new Set((options.sharpRegions ?? DEFAULT_SHARP).map(regionIndex));
	const face = new Float64Array(corners);
	for (let k = 0; k < corners; k += 3) {
		const a = indices[k] * 3;
		const b = indices[k + 1] * 3;
		const c = indices[k + 2] * 3;
		const ux = p[b] - p[a];
		const uy = p[b + 1] - p[a + 1];
		const uz = p[b + 2] - p[a + 2];
		const vx = p[c] - p[a];
		const vy = p[c + 1] - p[a + 1];
		const vz = p[c + 2] - p[a + 2];
		const x = uy * vz - uz * vy;
		const y = uz * vx - ux * vz;
		const z = ux * vy - uy * vx;
		const n = Math.sqrt(x * x + y * y + z * z) || 1;
		face[k] = x / n;
		face[k + 1] = y / n;
		face[k + 2] = z / n;
	}

	// corners joined across edges: `smooth` share a normal, `same` also a region
	const smooth = Uint32Array.from({ length: corners }, (_, k) => k);
	const same = smooth.slice();
	const { twin } = adjacency(mesh);
	for (let h = 0; h < corners; h++) {
		const other = twin[h];
		if (other < h) continue; // none, or seen from the other side
		const f = h - (h % 3);
		const g = other - (other % 3);
		const hNext = h % 3 === 2 ? h - 2 : h + 1;
		const oNext = other % 3 === 2 ? other - 2 : other + 1;
		// same corner of both triangles; neighbours that are wound alike meet head to head
		const flipped = indices[h] === indices[other];
		const [atH, atNext] = flipped ? [other, oNext] : [oNext, other];
		const border = regions !== undefined && regions[f / 3] !== regions[g / 3];
		const turn = face[f] * face[g] + face[f + 1] * face[g + 1] + face[f + 2] * face[g + 2];
		if (turn < cosCrease && !isSliver(f) && !isSliver(g)) continue;
		if (border && (sharp.has(regions[f / 3]) || sharp.has(regions[g / 3]))) continue;
		union(smooth, h, atH);
		union(smooth, hNext, atNext);
		if (border) continue;
		union(same, h, atH);
		union(same, hNext, atNext);
	}
	function isSliver(f: number): boolean {
		return face[f] === 0 && face[f + 1] === 0 && face[f + 2] === 0;
	}

	const sum = new Float64Array(corners * 3);
	for (let h = 0; h < corners; h++) {
		const f = h - (h % 3);
		const weight = cornerAngle(p, indices[h], indices[f + ((h + 1) % 3)], indices[f + ((h + 2) % 3)]);
		const root = find(smooth, h) * 3;
		sum[root] += weight * face[f];
		sum[root + 1] += weight * face[f + 1];
		sum[root + 2] += weight * face[f + 2];
	}

	const numberOf = new Int32Array(corners).fill(-1);
	const outIndices = new Uint32Array(corners);
	const firstCorner: number[] = [];
	for (let h = 0; h < corners; h++) {
		const root = find(same, h);
		if (numberOf[root] < 0) {
			numberOf[root] = firstCorner.length;
			firstCorner.push(h);
		}
		outIndices[h] = numberOf[root];
	}
	const count = firstCorner.length;
	const out: ShadedMesh = {
		positions: new Float32Array(count * 3),
		normals: new Float32Array(count * 3),
		indices: outIndices,
		regions: new Uint8Array(count),
		source: new Uint32Array(count),
	};
	firstCorner.forEach((h, i) => {
		const v = indices[h];
		out.source[i] = v;
		out.regions[i] = regions ? regions[Math.floor(h / 3)] : 0;
		out.positions.set(p.subarray(v * 3, v * 3 + 3), i * 3);
		const root = find(smooth, h) * 3;
		const n = Math.hypot(sum[root], sum[root + 1], sum[root + 2]);
		if (n > 0) {
			out.normals[i * 3] = sum[root] / n;
			out.normals[i * 3 + 1] = sum[root + 1] / n;
			out.normals[i * 3 + 2] = sum[root + 2] / n;
		} else {
			out.normals[i * 3 + 1] = 1; // a sliver alone has no direction: any unit vector
		}
	});
	return out;
}

function cornerAngle(p: Float32Array, at: number, b: number, c: number): number {
	const ux = p[b * 3] - p[at * 3];
	const uy = p[b * 3 + 1] - p[at * 3 + 1];
	const uz = p[b * 3 + 2] - p[at * 3 + 2];
	const vx = p[c * 3] - p[at * 3];
	const vy = p[c * 3 + 1] - p[at * 3 + 1];
	const vz = p[c * 3 + 2] - p[at * 3 + 2];
	const lengths = Math.sqrt((ux * ux + uy * uy + uz * uz) * (vx * vx + vy * vy + vz * vz));
	if (!(lengths > 0)) return 0;
	return Math.acos(Math.max(-1, Math.min(1, (ux * vx + uy * vy + uz * vz) / lengths)));
}

function find(parent: Uint32Array, k: number): number {
	while (parent[k] !== k) {
		parent[k] = parent[parent[k]];
		k = parent[k];
	}
	return k;
}

function union(parent: Uint32Array, a: number, b: number): void {
	const ra = find(parent, a);
	const rb = find(parent, b);
	if (ra < rb) parent[rb] = ra;
	else parent[ra] = rb;
}
