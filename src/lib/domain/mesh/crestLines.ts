import { chainEdges } from './chainEdges';
import type { LineKind, SurfaceLine } from './surfaceLine';
import { regionIndex, type Region, type TriMesh } from './triMesh';

/** Points that say which way a line runs. */
const LOOK_BACK = 6;

const CRESTS: readonly [Region, LineKind][] = [
	['carina', 'edge'],
	['ridge', 'ridge'],
];

interface Crest {
	point: [number, number, number];
	normal: [number, number, number];
}

/**
 * Crests of cutting edges and ridges of a mesh in the tooth frame that knows its regions: the mesh is cut across at
 * `slices` heights, each strip of a cut that lies in such a region gives the point that stands out most over the
 * chord of the strip, and points that follow each other up the tooth make a line.
 */
export function crestLines(mesh: TriMesh, slices: number): SurfaceLine[] {
	const { positions: p, indices, regions } = mesh;
	if (!regions) return [];
	let [low, high] = [Infinity, -Infinity];
	for (let i = 1; i < p.length; i += 3) {
		low = Math.min(low, p[i]);
		high = Math.max(high, p[i]);
	}
	const step = (high - low) / slices;
	const lines: SurfaceLine[] = [];
	for (const [region, kind] of CRESTS) {
		const wanted = regionIndex(region);
		const cuts = Array.from({ length: slices }, () => [] as number[]);
		for (let t = 0; t < regions.length; t++) {
			if (regions[t] !== wanted) continue;
			const ys = [0, 1, 2].map((k) => p[indices[t * 3 + k] * 3 + 1]);
			const from = Math.max(0, Math.ceil((Math.min(...ys) - low) / step - 0.5));
			const to = Math.min(slices - 1, Math.floor((Math.max(...ys) - low) / step - 0.5));
			for (let i = from; i <= to; i++) cuts[i].push(t);
		}
		const middles = cuts.map((triangles, i) => crestsOf(mesh, triangles, low + (i + 0.5) * step));
		lines.push(...follow(middles, (kind === 'ridge' ? 1.6 : 4) * step, kind));
	}
	return lines;
}

/** The crest of each strip of one cut. */
function crestsOf(mesh: TriMesh, triangles: readonly number[], height: number): Crest[] {
	const { positions: p, indices } = mesh;
	const vertices = p.length / 3;
	const at = new Map<number, [number, number]>();
	const pairs: [number, number][] = [];
	for (const t of triangles) {
		const cut: number[] = [];
		for (let k = 0; k < 3; k++) {
			const [a, b] = [indices[t * 3 + k], indices[t * 3 + ((k + 1) % 3)]];
			if (p[a * 3 + 1] >= height === p[b * 3 + 1] >= height) continue;
			const [lo, hi] = a < b ? [a, b] : [b, a];
			const s = (height - p[lo * 3 + 1]) / (p[hi * 3 + 1] - p[lo * 3 + 1]);
			const key = lo * vertices + hi;
			at.set(key, [
				p[lo * 3] + (p[hi * 3] - p[lo * 3]) * s,
				p[lo * 3 + 2] + (p[hi * 3 + 2] - p[lo * 3 + 2]) * s,
			]);
			cut.push(key);
		}
		if (cut.length === 2) pairs.push([cut[0], cut[1]]);
	}
	const crests: Crest[] = [];
	for (const { nodes, closed } of chainEdges(pairs)) {
		if (closed) continue;
		const points = nodes.map((node) => at.get(node)!);
		const [a, b] = [points[0], points[points.length - 1]];
		const [dx, dz] = [b[0] - a[0], b[1] - a[1]];
		const chord = Math.hypot(dx, dz);
		if (!(chord > 0)) continue;
		let best = points[points.length >> 1];
		let most = 0;
		for (const point of points) {
			const out = ((point[0] - a[0]) * dz - (point[1] - a[1]) * dx) / chord;
			if (Math.abs(out) <= Math.abs(most)) continue;
			most = out;
			best = point;
		}
		const sign = most < 0 ? -1 : 1;
		crests.push({ point: [best[0], height, best[1]], normal: [sign * dz, 0, -sign * dx] });
	}
	return crests;
}

/** Where a line will be `ahead` cuts on, from how it ran over its last few points. */
function expected(crests: readonly Crest[], ahead: number): number[] {
	const last = crests[crests.length - 1].point;
	const back = Math.min(LOOK_BACK, crests.length - 1);
	if (back === 0) return last;
	const before = crests[crests.length - 1 - back].point;
	return last.map((x, k) => x + ((x - before[k]) / back) * ahead);
}

function follow(cuts: Crest[][], reach: number, kind: LineKind): SurfaceLine[] {
	const done: Crest[][] = [];
	let open: { crests: Crest[]; last: number }[] = [];
	cuts.forEach((crests, i) => {
		const free = new Set(crests);
		for (const track of open) {
			const point = expected(track.crests, i - track.last);
			let best: Crest | null = null;
			let nearest = reach;
			for (const crest of free) {
				const d = Math.hypot(...crest.point.map((x, k) => x - point[k]));
				if (d < nearest) {
					nearest = d;
					best = crest;
				}
			}
			if (!best) continue;
			free.delete(best);
			track.crests.push(best);
			track.last = i;
		}
		done.push(...open.filter(({ last }) => i - last > 2).map((track) => track.crests));
		open = open.filter(({ last }) => i - last <= 2);
		for (const crest of free) open.push({ crests: [crest], last: i });
	});
	return [...done, ...open.map((track) => track.crests)]
		.filter((crests) => crests.length >= 4)
		.map((crests) => ({
			kind,
			closed: false,
			points: crests.flatMap(({ point }) => point),
			normals: crests.flatMap(({ normal }) => normal),
		}));
}
