import earcut from 'earcut';
import type { Vec3 } from '../vec3';
import { regionIndex, type Region, type TriMesh } from './triMesh';

/** The side of a plane on which normal . p <= offset_mm; `normal` is a unit vector. */
export interface HalfSpace {
	normal: Vec3;
	offset_mm: number;
}

/** A vertex this close to the plane (over the mesh's size) is moved just inside, so that no cut passes through it. */
const NUDGE = 2e-6;

/**
 * Keeps the part of a closed mesh inside a half-space and closes the cut with flat triangles of region `cap`.
 * The result is closed again: each cut point is made once per edge, and every edge of the cut is used by the cap.
 * Returns the same mesh when the plane misses it, and null when nothing is left.
 * Several outlines and outlines inside others (a hollow tooth) are capped properly.
 * Throws when the mesh is not closed at the cut.
 */
export function clipHalfSpace(mesh: TriMesh, half: HalfSpace, cap: Region): TriMesh | null {
	const { normal, offset_mm } = half;
	const count = mesh.positions.length / 3;
	const source = Float64Array.from(mesh.positions);
	const distances = new Float64Array(count);
	let [low, high] = [Infinity, -Infinity];
	let reach = Math.abs(offset_mm);
	for (let i = 0; i < count; i++) {
		const [x, y, z] = [source[3 * i], source[3 * i + 1], source[3 * i + 2]];
		distances[i] = normal[0] * x + normal[1] * y + normal[2] * z - offset_mm;
		low = Math.min(low, distances[i]);
		high = Math.max(high, distances[i]);
		reach = Math.max(reach, Math.abs(x), Math.abs(y), Math.abs(z));
	}
	const nudge = NUDGE * reach;
	if (high <= nudge) return mesh;
	if (low >= -nudge) return null;
	for (let i = 0; i < count; i++) {
		if (Math.abs(distances[i]) >= nudge) continue;
		for (let k = 0; k < 3; k++) source[3 * i + k] -= normal[k] * (nudge + distances[i]);
		distances[i] = -nudge;
	}

	const positions: number[] = [];
	const kept = new Int32Array(count).fill(-1);
	const keep = (i: number): number => {
		if (kept[i] < 0) {
			kept[i] = positions.length / 3;
			positions.push(source[3 * i], source[3 * i + 1], source[3 * i + 2]);
		}
		return kept[i];
	};
	const cuts = new Map<number, number>();
	/** the cut point on the edge between an inner and an outer vertex */
	const cut = (inner: number, outer: number): number => {
		const key = inner * count + outer;
		let index = cuts.get(key);
		if (index === undefined) {
			const t = distances[inner] / (distances[inner] - distances[outer]);
			index = positions.length / 3;
			for (let k = 0; k < 3; k++)
				positions.push(source[3 * inner + k] + (source[3 * outer + k] - source[3 * inner + k]) * t);
			cuts.set(key, index);
		}
		return index;
	};

	const indices: number[] = [];
	const regions: number[] = [];
	/** for each cut point, the next one along the cap's outline */
	const next = new Map<number, number>();
	for (let f = 0; f < mesh.indices.length; f += 3) {
		const corners = [mesh.indices[f], mesh.indices[f + 1], mesh.indices[f + 2]];
		const inside = corners.filter((i) => distances[i] < 0).length;
		if (inside === 0) continue;
		const region = mesh.regions?.[f / 3] ?? 0;
		const add = (p: number, q: number, r: number): void => {
			indices.push(p, q, r);
			regions.push(region);
		};
		if (inside === 3) {
			add(keep(corners[0]), keep(corners[1]), keep(corners[2]));
			continue;
		}
		// turn the corners so that the odd one out comes first
		const odd = corners.findIndex((i) => distances[i] < 0 === (inside === 1));
		const [a, b, c] = [corners[odd], corners[(odd + 1) % 3], corners[(odd + 2) % 3]];
		if (inside === 1) {
			const [p, q] = [cut(a, b), cut(a, c)];
			add(keep(a), p, q);
			next.set(q, p);
		} else {
			const [p, q] = [cut(b, a), cut(c, a)];
			add(p, keep(b), keep(c));
			add(p, keep(c), q);
			next.set(p, q);
		}
	}

	const capIndex = regionIndex(cap);
	for (const triangle of capTriangles(outlines(next), positions, normal)) {
		indices.push(...triangle);
		regions.push(capIndex);
	}
	const clipped = { positions: new Float32Array(positions), indices: new Uint32Array(indices) };
	return mesh.regions ? { ...clipped, regions: new Uint8Array(regions) } : clipped;
}

/** Follows the links into closed lines of point numbers. */
function outlines(next: Map<number, number>): number[][] {
	const loops: number[][] = [];
	const seen = new Set<number>();
	for (const start of next.keys()) {
		if (seen.has(start)) continue;
		const loop: number[] = [];
		let at = start;
		do {
			seen.add(at);
			loop.push(at);
			const follow = next.get(at);
			if (follow === undefined || (seen.has(follow) && follow !== start))
				throw new RangeError('clipHalfSpace: the mesh is not closed where the plane cuts it');
			at = follow;
		} while (at !== start);
		loops.push(loop);
	}
	return loops;
}

interface FlatLoop {
	points: number[];
	/** u, v in the plane; counter-clockwise seen along -normal for outer lines, clockwise for holes */
	flat: [number, number][];
	area: number;
}

/** Triangles, as point numbers, that fill the outlines and face along `normal`. */
function capTriangles(loops: number[][], positions: number[], normal: Vec3): number[][] {
	const [u, v] = axes(normal);
	const flatLoops = loops.map((points): FlatLoop => {
		const flat = points.map((i): [number, number] => {
			const p = positions.slice(3 * i, 3 * i + 3);
			return [p[0] * u[0] + p[1] * u[1] + p[2] * u[2], p[0] * v[0] + p[1] * v[1] + p[2] * v[2]];
		});
		return { points, flat, area: signedArea(flat) };
	});
	const outers = flatLoops.filter((loop) => loop.area >= 0);
	const holesOf = new Map<FlatLoop, FlatLoop[]>(outers.map((loop) => [loop, []]));
	for (const hole of flatLoops.filter((loop) => loop.area < 0)) {
		// the smallest outline round it
		const round = outers
			.filter((outer) => contains(outer.flat, hole.flat[0]))
			.sort((a, b) => a.area - b.area)[0];
		if (round) holesOf.get(round)?.push(hole);
		else holesOf.set(hole, []);
	}
	return [...holesOf].flatMap(([outer, holes]) => fill(outer, holes));
}

function fill(outer: FlatLoop, holes: FlatLoop[]): number[][] {
	const all = [outer, ...holes];
	const points = all.flatMap((loop) => loop.points);
	const starts: number[] = [];
	let length = outer.points.length;
	for (const hole of holes) {
		starts.push(length);
		length += hole.points.length;
	}
	const corners = earcut(
		all.flatMap((loop) => loop.flat.flat()),
		starts,
		2,
	);
	const flatPoints = all.flatMap((loop) => loop.flat);
	const triangles: number[][] = [];
	let turn = 0;
	for (let i = 0; i < corners.length; i += 3) {
		const triangle = [corners[i], corners[i + 1], corners[i + 2]];
		triangles.push(triangle);
		turn += signedArea(triangle.map((k) => flatPoints[k]));
	}
	// all triangles turn the same way: make it the way that faces along the normal
	if (turn < 0) for (const triangle of triangles) triangle.reverse();
	return restoreDropped(triangles, all).map((triangle) => triangle.map((k) => points[k]));
}

/**
 * The triangulation leaves out points that lie on a straight stretch; the tooth's surface has them, so the triangle
 * along such a stretch is split into a fan that uses them.
 */
function restoreDropped(triangles: number[][], loops: FlatLoop[]): number[][] {
	const edges = new Map<number, number>();
	const total = loops.reduce((sum, loop) => sum + loop.points.length, 0);
	triangles.forEach((t, i) => {
		for (let k = 0; k < 3; k++) edges.set(t[k] * total + t[(k + 1) % 3], i);
	});
	const fans = new Map<number, number[][]>();
	let start = 0;
	for (const loop of loops) {
		const n = loop.points.length;
		for (let i = 0; i < n; i++) {
			if (edges.has((start + i) * total + start + ((i + 1) % n))) continue;
			// find the triangle edge that jumps from point i over the dropped ones
			for (let jump = 2; jump < n; jump++) {
				const key = (start + i) * total + start + ((i + jump) % n);
				const owner = edges.get(key);
				if (owner === undefined || edges.has((start + ((i + jump) % n)) * total + start + i)) continue;
				const chain = Array.from({ length: jump + 1 }, (_, k) => start + ((i + k) % n));
				fans.set(owner, [...(fans.get(owner) ?? []), chain]);
				i += jump - 1;
				break;
			}
		}
		start += n;
	}
	return triangles.flatMap((t, i) => {
		const chains = fans.get(i);
		return chains ? splitTriangle(t, chains) : [t];
	});
}

/** Splits a triangle whose edges (one, two or all three) carry further points. */
function splitTriangle(triangle: number[], chains: number[][]): number[][] {
	// the outline of the triangle with the further points in place
	const outline: number[] = [];
	for (let k = 0; k < 3; k++) {
		const [from, to] = [triangle[k], triangle[(k + 1) % 3]];
		const chain = chains.find((c) => c[0] === from && c[c.length - 1] === to);
		outline.push(...(chain ? chain.slice(0, -1) : [from]));
	}
	if (chains.length === 1) {
		// one edge: a fan from the corner opposite
		const chain = chains[0];
		const apex = triangle.find((p) => p !== chain[0] && p !== chain[chain.length - 1]) as number;
		return chain.slice(1).map((p, k) => [chain[k], p, apex]);
	}
	// more edges: cut off the corner between two chains, then fan the rest
	const corner = triangle.find(
		(p) => chains.some((c) => c[c.length - 1] === p) && chains.some((c) => c[0] === p),
	) as number;
	const at = outline.indexOf(corner);
	const n = outline.length;
	const before = outline[(at - 1 + n) % n];
	const after = outline[(at + 1) % n];
	const rest = [...outline.slice(at + 1), ...outline.slice(0, at)];
	const fan: number[][] = [[before, corner, after]];
	// `rest` runs from `after` round to `before`: join it from both ends
	let [i, j] = [0, rest.length - 1];
	let fromFront = true;
	while (j - i > 1) {
		if (fromFront) {
			fan.push([rest[i], rest[i + 1], rest[j]]);
			i++;
		} else {
			fan.push([rest[i], rest[j - 1], rest[j]]);
			j--;
		}
		fromFront = !fromFront;
	}
	return fan;
}

/** Two unit vectors that span the plane, so that u x v = normal. */
function axes(n: Vec3): [Vec3, Vec3] {
	const helper: Vec3 = Math.abs(n[1]) < 0.9 ? [0, 1, 0] : [1, 0, 0];
	const ux = helper[1] * n[2] - helper[2] * n[1];
	const uy = helper[2] * n[0] - helper[0] * n[2];
	const uz = helper[0] * n[1] - helper[1] * n[0];
	const length = Math.hypot(ux, uy, uz);
	const u: Vec3 = [ux / length, uy / length, uz / length];
	return [u, [n[1] * u[2] - n[2] * u[1], n[2] * u[0] - n[0] * u[2], n[0] * u[1] - n[1] * u[0]]];
}

function signedArea(points: readonly (readonly [number, number])[]): number {
	let sum = 0;
	for (let i = 0; i < points.length; i++) {
		const [a, b] = [points[i], points[(i + 1) % points.length]];
		sum += a[0] * b[1] - b[0] * a[1];
	}
	return sum / 2;
}

/** Whether a point lies inside a closed line (crossings of a ray). */
function contains(line: readonly (readonly [number, number])[], point: readonly [number, number]): boolean {
	let inside = false;
	for (let i = 0, j = line.length - 1; i < line.length; j = i++) {
		const [a, b] = [line[i], line[j]];
		if (a[1] > point[1] !== b[1] > point[1]) {
			const x = a[0] + ((point[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0]);
			if (point[0] < x) inside = !inside;
		}
	}
	return inside;
}
