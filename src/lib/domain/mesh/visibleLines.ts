import type { DepthMap } from './depthMap';
import type { DrawingAxes } from './drawingAxes';
import type { LineKind, SurfaceLine } from './surfaceLine';

/** A line as seen: x, y pairs, mm to the right and up. */
export interface SeenLine {
	kind: LineKind;
	points: number[];
	closed: boolean;
}

/** Lengths in cells of the depth map. */
const STEP = 0.7;
/** a gap this short in a visible line is a fault of the test */
const GAP = 7;
/** visible pieces shorter than this are crumbs */
const CRUMB: Readonly<Record<LineKind, number>> = {
	outline: 0,
	facet: 12,
	rim: 12,
	base: 20,
	break: 40,
	edge: 40,
	ridge: 40,
	fold: 26,
};
/** this close to the background, a line over this length is the outline itself */
const RIM = 2;
const RIM_RUN = 9;
const FOLD_RIM = 7;
const FOLD_RIM_RUN = 5;
/** how far behind the surface a line may lie; crests of notched edges and borders under a lip lie deeper */
const DEPTH_SLACK: Readonly<Record<LineKind, number>> = {
	outline: 0,
	facet: 0.75,
	rim: 0.75,
	base: 4,
	break: 0.75,
	edge: 5,
	ridge: 1,
	fold: 0.75,
};

/** Least cosine between normal and view: folds face neither way, the normal at a corner is a mean of two. */
const FACING: Readonly<Record<LineKind, number>> = {
	outline: -1,
	fold: -1,
	base: -0.45,
	facet: -0.45,
	break: -0.45,
	rim: -0.45,
	edge: -0.12,
	ridge: 0,
};

/** Lines of the first kinds are drawn first; where another runs along them for longer than this it is left out. */
const ORDER: readonly LineKind[] = ['facet', 'rim', 'base', 'break', 'edge', 'ridge', 'fold'];
const BESIDE = 4;
const BESIDE_RUN = 11;

/**
 * Those parts of lines on a surface that a viewer sees, by comparing them with what the depth map saw in the nine
 * cells round each point. What runs along the outline or along a more telling line is left out.
 */
export function visibleLines(lines: readonly SurfaceLine[], map: DepthMap, axes: DrawingAxes): SeenLine[] {
	const ink = new Uint8Array(map.width * map.height);
	const drawn: SeenLine[] = [];
	for (const kind of ORDER) {
		for (const line of lines) {
			if (line.kind !== kind) continue;
			const fresh = pieces(line, map, axes, ink);
			for (const { points } of fresh) spread(ink, map, points);
			drawn.push(...fresh);
		}
	}
	return drawn;
}

/** Marks the cells round a drawn line. */
function spread(ink: Uint8Array, map: DepthMap, points: readonly number[]): void {
	for (let k = 0; k < points.length; k += 2) {
		const i = Math.floor((points[k] - map.origin_mm[0]) / map.cell_mm);
		const j = Math.floor((points[k + 1] - map.origin_mm[1]) / map.cell_mm);
		for (let y = Math.max(0, j - BESIDE); y <= Math.min(map.height - 1, j + BESIDE); y++) {
			const from = y * map.width + Math.max(0, i - BESIDE);
			ink.fill(1, from, y * map.width + Math.min(map.width - 1, i + BESIDE) + 1);
		}
	}
}

function pieces(line: SurfaceLine, map: DepthMap, axes: DrawingAxes, ink: Uint8Array): SeenLine[] {
	const { x, y, visible } = sample(line, map, axes, ink);
	const n = x.length;
	if (n < 3) return [];
	const seen = runsOf(visible, line.closed);
	const wholly = seen.length === 1 && seen[0].count === n;
	if (wholly && line.closed) {
		return n * STEP < CRUMB[line.kind] ? [] : [{ kind: line.kind, closed: true, points: pairs(x, y, 0, n) }];
	}
	return seen
		.filter(({ count }) => count * STEP >= CRUMB[line.kind])
		.map(({ start, count }) => ({ kind: line.kind, closed: false, points: pairs(x, y, start, count) }));
}

function pairs(x: number[], y: number[], start: number, count: number): number[] {
	const out: number[] = [];
	for (let i = start; i < start + count; i++) out.push(x[i % x.length], y[i % x.length]);
	return out;
}

/** The line in steps under one cell, as seen, and at which of them it shows. */
function sample(
	line: SurfaceLine,
	map: DepthMap,
	axes: DrawingAxes,
	ink: Uint8Array,
): { x: number[]; y: number[]; visible: Uint8Array } {
	const { points: p, normals } = line;
	const count = p.length / 3;
	const along = (source: number[], i: number, axis: readonly number[]): number =>
		source[i * 3] * axis[0] + source[i * 3 + 1] * axis[1] + source[i * 3 + 2] * axis[2];
	const facing = (i: number): number => {
		const size = Math.hypot(normals[i * 3], normals[i * 3 + 1], normals[i * 3 + 2]);
		return size > 0 ? along(normals, i, axes.towards) / size : 0;
	};
	const x: number[] = [];
	const y: number[] = [];
	const shows: number[] = [];
	const rim: number[] = [];
	const beside: number[] = [];
	for (let i = 0; i < count; i++) {
		const last = i + 1 === count;
		if (last && !line.closed) {
			if (i === 0) break;
		}
		const j = last ? (line.closed ? 0 : i) : i + 1;
		const [x0, y0, z0] = [along(p, i, axes.right), along(p, i, axes.up), along(p, i, axes.towards)];
		const [x1, y1, z1] = [along(p, j, axes.right), along(p, j, axes.up), along(p, j, axes.towards)];
		const [f0, f1] = [facing(i), facing(j)];
		const steps = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / (STEP * map.cell_mm)));
		for (let s = 0; s < (j === i ? 1 : steps); s++) {
			const t = s / steps;
			x.push(x0 + (x1 - x0) * t);
			y.push(y0 + (y1 - y0) * t);
			const at = look(map, x[x.length - 1], y[y.length - 1], z0 + (z1 - z0) * t, line.kind);
			shows.push(at.shows && f0 + (f1 - f0) * t >= FACING[line.kind] ? 1 : 0);
			rim.push(at.rim ? 1 : 0);
			beside.push(ink[at.cell]);
		}
	}
	// short gaps are closed before the rim is taken away, so that no line is bridged along the outline
	const visible = Uint8Array.from(shows);
	close(visible, line.closed);
	hideRuns(visible, rim, line.closed, line.kind === 'fold' ? FOLD_RIM_RUN : RIM_RUN);
	hideRuns(visible, beside, line.closed, BESIDE_RUN);
	return { x, y, visible };
}

/** Takes away what is flagged over more than `longest` cells at a stretch. */
function hideRuns(visible: Uint8Array, flags: number[], ring: boolean, longest: number): void {
	for (const { start, count } of runsOf(Uint8Array.from(flags), ring)) {
		if (count * STEP <= longest) continue;
		for (let i = start; i < start + count; i++) visible[i % visible.length] = 0;
	}
}

function look(
	map: DepthMap,
	x: number,
	y: number,
	z: number,
	kind: LineKind,
): { shows: boolean; rim: boolean; cell: number } {
	const i = Math.floor((x - map.origin_mm[0]) / map.cell_mm);
	const j = Math.floor((y - map.origin_mm[1]) / map.cell_mm);
	let least = Infinity;
	for (let dj = -1; dj <= 1; dj++)
		for (let di = -1; di <= 1; di++) least = Math.min(least, depthAt(map, i + di, j + dj));
	const reach = kind === 'fold' ? FOLD_RIM : RIM;
	let rim = false;
	for (let dj = -reach; dj <= reach && !rim; dj++)
		for (let di = -reach; di <= reach && !rim; di++) rim = depthAt(map, i + di, j + dj) === -Infinity;
	return { shows: z >= least - DEPTH_SLACK[kind] * map.cell_mm, rim, cell: j * map.width + i };
}

function depthAt(map: DepthMap, i: number, j: number): number {
	if (i < 0 || j < 0 || i >= map.width || j >= map.height) return -Infinity;
	return map.depth[j * map.width + i];
}

/** Runs of ones; a ring's run may go over its end. */
function runsOf(flags: Uint8Array, ring: boolean): { start: number; count: number }[] {
	const n = flags.length;
	const runs: { start: number; count: number }[] = [];
	for (let i = 0; i < n; i++) {
		if (!flags[i]) continue;
		let end = i;
		while (end < n && flags[end]) end++;
		runs.push({ start: i, count: end - i });
		i = end;
	}
	const [first, last] = [runs[0], runs[runs.length - 1]];
	if (ring && runs.length > 1 && first.start === 0 && last.start + last.count === n) {
		last.count += first.count;
		runs.shift();
	}
	return runs;
}

function close(flags: Uint8Array, ring: boolean): void {
	const gaps = runsOf(
		flags.map((flag) => 1 - flag),
		ring,
	);
	for (const { start, count } of gaps) {
		const atEnd = !ring && (start === 0 || start + count === flags.length);
		if (atEnd || count === flags.length || count * STEP > GAP) continue;
		for (let i = start; i < start + count; i++) flags[i % flags.length] = 1;
	}
}
