import { adjacency } from './adjacency';
import { chainEdges } from './chainEdges';
import type { LineKind, SurfaceLine } from './surfaceLine';
import { REGIONS, type Region, type TriMesh } from './triMesh';

/** Cutting edges and ridges are part of the enamel: their own borders are not drawn, their crests are. */
const GROUND: Readonly<Record<Region, Region>> = {
	enamel: 'enamel',
	carina: 'enamel',
	ridge: 'enamel',
	facet: 'facet',
	dentine: 'dentine',
	root: 'root',
	pit: 'pit',
	pulp: 'pulp',
};

/** Corners turning by more than this are drawn. */
const CORNER_DEG = 38;

/**
 * Borders between the regions of a welded mesh, and its sharp corners elsewhere (not on cutting edges or ridges, whose
 * crests are lines of their own), as lines along mesh edges. `normals` as of `vertexNormals`.
 */
export function borderLines(mesh: TriMesh, normals: Float32Array): SurfaceLine[] {
	const { positions: p, indices, regions } = mesh;
	const { twin } = adjacency(mesh);
	const regionOf = (half: number): Region => REGIONS[regions ? regions[Math.floor(half / 3)] : 0];
	const found = new Map<LineKind, [number, number][]>();
	const least = Math.cos((CORNER_DEG * Math.PI) / 180);
	for (let h = 0; h < indices.length; h++) {
		const other = twin[h];
		if (other < h) continue;
		const kind =
			kindBetween(regionOf(h), regionOf(other)) ??
			(turning(p, indices, h, other) < least && !onCrest(regionOf(h)) && !onCrest(regionOf(other))
				? 'break'
				: null);
		if (!kind) continue;
		const pairs = found.get(kind) ?? [];
		if (pairs.length === 0) found.set(kind, pairs);
		pairs.push([indices[h], indices[h % 3 === 2 ? h - 2 : h + 1]]);
	}
	return [...found].flatMap(([kind, pairs]) =>
		chainEdges(pairs).map(({ nodes, closed }) => ({
			kind,
			closed,
			points: nodes.flatMap((v) => [p[v * 3], p[v * 3 + 1], p[v * 3 + 2]]),
			normals: nodes.flatMap((v) => [normals[v * 3], normals[v * 3 + 1], normals[v * 3 + 2]]),
		})),
	);
}

const onCrest = (region: Region): boolean => region === 'carina' || region === 'ridge';

function kindBetween(one: Region, two: Region): LineKind | null {
	const [a, b] = [GROUND[one], GROUND[two]];
	if (a === b) return null;
	const either = (region: Region): boolean => a === region || b === region;
	if (either('facet')) return 'facet';
	if (either('pit') || either('pulp')) return 'rim';
	if (either('dentine')) return 'break';
	return 'base';
}

/** Cosine of the angle between the two triangles at an edge; 1 where one of them has no area. */
function turning(p: Float32Array, indices: Uint32Array, one: number, two: number): number {
	const [m, n] = [one, two].map((half) => {
		const k = half - (half % 3);
		const [a, b, c] = [indices[k] * 3, indices[k + 1] * 3, indices[k + 2] * 3];
		const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
		const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
		return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
	});
	const size = Math.hypot(...m) * Math.hypot(...n);
	return size > 0 ? (m[0] * n[0] + m[1] * n[1] + m[2] * n[2]) / size : 1;
}
