import type { Vec3 } from '../vec3';
import { polygonArea } from './polygonArea';
import type { TriMesh } from './triMesh';

/** A plane with its own axes: `u`, `v` and `normal` are unit vectors, right-handed (u x v = normal). */
export interface PlaneFrame {
	origin: Vec3;
	u: Vec3;
	v: Vec3;
	normal: Vec3;
}

export interface SectionLoop {
	/** x, y pairs along u and v from the frame's origin; the last point joins the first */
	points: Float64Array;
	/** enclosed area, never negative */
	area: number;
	perimeter: number;
	/** lies inside an odd number of other loops, as the wall of a pulp cavity does */
	hole: boolean;
	/** false when the mesh is open here and the ends were joined by a straight line */
	closed: boolean;
}

/** Largest loop first. */
export type Section = SectionLoop[];

/** Height of every vertex above the frame's origin along its normal. */
export function heightsAlong(mesh: TriMesh, frame: PlaneFrame): Float64Array {
	const p = mesh.positions;
	const [nx, ny, nz] = frame.normal;
	const [ox, oy, oz] = frame.origin;
	const out = new Float64Array(p.length / 3);
	for (let i = 0; i < out.length; i++) {
		out[i] = (p[i * 3] - ox) * nx + (p[i * 3 + 1] - oy) * ny + (p[i * 3 + 2] - oz) * nz;
	}
	return out;
}

/**
 * Cuts a welded mesh with the plane at `height` along the frame's normal.
 *
 * A vertex exactly on the plane counts as above it, so every cut triangle gives exactly one line from one of its
 * edges to another, and lines meet by the number of the edge, not by their coordinates. Neither the winding
 * nor the order of the triangles matters. Pass `heights` (of `heightsAlong`) when cutting more than once.
 */
export function section(
	mesh: TriMesh,
	frame: PlaneFrame,
	height: number,
	heights: Float64Array = heightsAlong(mesh, frame),
): Section {
	const { indices, positions: p } = mesh;
	const vertices = heights.length;
	/** node of each cut edge, by lower vertex * vertices + higher vertex */
	const nodeOfEdge = new Map<number, number>();
	const xy: number[] = [];
	/** up to two neighbours per node, more on a non-manifold edge */
	const links: number[][] = [];

	const nodeOn = (a: number, b: number): number => {
		const lo = a < b ? a : b;
		const hi = a < b ? b : a;
		const key = lo * vertices + hi;
		const known = nodeOfEdge.get(key);
		if (known !== undefined) return known;
		const node = links.length;
		const t = (height - heights[lo]) / (heights[hi] - heights[lo]);
		const x = p[lo * 3] + (p[hi * 3] - p[lo * 3]) * t - frame.origin[0];
		const y = p[lo * 3 + 1] + (p[hi * 3 + 1] - p[lo * 3 + 1]) * t - frame.origin[1];
		const z = p[lo * 3 + 2] + (p[hi * 3 + 2] - p[lo * 3 + 2]) * t - frame.origin[2];
		xy.push(
			x * frame.u[0] + y * frame.u[1] + z * frame.u[2],
			x * frame.v[0] + y * frame.v[1] + z * frame.v[2],
		);
		links.push([]);
		nodeOfEdge.set(key, node);
		return node;
	};

	for (let k = 0; k < indices.length; k += 3) {
		const a = indices[k];
		const b = indices[k + 1];
		const c = indices[k + 2];
		const above =
			(heights[a] >= height ? 1 : 0) + (heights[b] >= height ? 1 : 0) + (heights[c] >= height ? 1 : 0);
		if (above === 0 || above === 3) continue;
		// the corner that is alone on its side
		const lone = above === 1;
		const single = heights[a] >= height === lone ? a : heights[b] >= height === lone ? b : c;
		const [second, third] = single === a ? [b, c] : single === b ? [c, a] : [a, b];
		const from = nodeOn(single, second);
		const to = nodeOn(single, third);
		links[from].push(to);
		links[to].push(from);
	}
	return nest(joinLoops(xy, links));
}

function joinLoops(xy: number[], links: number[][]): SectionLoop[] {
	const loops: SectionLoop[] = [];
	const walk = (start: number): void => {
		const points: number[] = [];
		let node = start;
		let closed = false;
		for (;;) {
			points.push(xy[node * 2], xy[node * 2 + 1]);
			const next = links[node].pop();
			if (next === undefined) break;
			const back = links[next];
			back.splice(back.indexOf(node), 1);
			if (next === start) {
				closed = true;
				break;
			}
			node = next;
		}
		if (points.length < 6) return;
		const flat = Float64Array.from(points);
		loops.push({
			points: flat,
			area: Math.abs(polygonArea(flat)),
			perimeter: perimeterOf(flat),
			hole: false,
			closed,
		});
	};
	// open chains first, from their ends; what is left over are rings
	for (let node = 0; node < links.length; node++) if (links[node].length % 2 === 1) walk(node);
	for (let node = 0; node < links.length; node++) while (links[node].length > 0) walk(node);
	return loops;
}

function perimeterOf(points: Float64Array): number {
	let sum = 0;
	const n = points.length;
	for (let i = 0; i < n; i += 2) {
		const j = i + 2 < n ? i + 2 : 0;
		sum += Math.hypot(points[j] - points[i], points[j + 1] - points[i + 1]);
	}
	return sum;
}

function nest(loops: SectionLoop[]): SectionLoop[] {
	loops.sort((a, b) => b.area - a.area);
	for (let i = 1; i < loops.length; i++) {
		let depth = 0;
		for (let j = 0; j < i; j++) if (inside(loops[j].points, loops[i].points)) depth++;
		loops[i].hole = depth % 2 === 1;
	}
	return loops;
}

/** Most of the inner loop's points lie inside the outer one (crossing number; a few are enough to tell). */
function inside(outer: Float64Array, inner: Float64Array): boolean {
	let votes = 0;
	const step = Math.max(1, Math.floor(inner.length / 2 / 5)) * 2;
	let asked = 0;
	for (let k = 0; k < inner.length; k += step) {
		const x = inner[k];
		const y = inner[k + 1];
		let odd = false;
		for (let i = 0, j = outer.length - 2; i < outer.length; j = i, i += 2) {
			const yi = outer[i + 1];
			const yj = outer[j + 1];
			if (yi > y === yj > y) continue;
			if (x < ((outer[j] - outer[i]) * (y - yi)) / (yj - yi) + outer[i]) odd = !odd;
		}
		asked++;
		if (odd) votes++;
	}
	return votes * 2 > asked;
}
