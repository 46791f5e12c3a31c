import { vec3 } from '../vec3';
import { borderLines } from './borderLines';
import { bounds } from './bounds';
import { crestLines } from './crestLines';
import { depthMap, type DepthMap } from './depthMap';
import { drawingAxes, DRAWN_VIEWS, type DrawingAxes } from './drawingAxes';
import { foldLines } from './foldLines';
import { outline } from './outline';
import { planeFrame } from './planeFrame';
import { section } from './section';
import { simplifyLine } from './simplifyLine';
import { simplifyLoop } from './simplifyLoop';
import { smoothLine } from './smoothLine';
import { stipple } from './stipple';
import type { LineKind, SurfaceLine } from './surfaceLine';
import { REGIONS, type Region, type TriMesh } from './triMesh';
import { vertexNormals } from './vertexNormals';
import { visibleLines } from './visibleLines';

/** One line of a drawing: x, y pairs, mm to the right and up. */
export interface DrawnLine {
	kind: LineKind;
	points: number[];
	/** the last point joins the first */
	closed: boolean;
}

export interface DrawnView {
	/** lower left and upper right of all lines, mm, from the middle of the crown's base */
	min: [number, number];
	max: [number, number];
	/** outlines first */
	lines: DrawnLine[];
	/** x, y of each dot of shading, mm */
	dots: number[];
}

/** A cut across the crown, seen and turned as the tip view. */
export interface DrawnSection {
	/** height of the cut above the crown's base, mm */
	at: number;
	min: [number, number];
	max: [number, number];
	/** least and greatest x of the cut in the side and the front view, mm */
	side: [number, number];
	front: [number, number];
	/** borders of the cut face, outer ones and holes; x, y pairs, mm */
	loops: number[][];
}

/** A measured drawing of one tooth: plain data in mm that can be kept as JSON. */
export interface LineDrawing {
	/** drawn from the labial side, the mesial edge and the tip, see `drawingAxes` */
	side: DrawnView;
	front: DrawnView;
	tip: DrawnView;
	/** half way up the crown; null where the plane misses it */
	section: DrawnSection | null;
}

/** What a drawing needs to know beside the mesh; CrownMeasures have it. */
export interface LineDrawingFacts {
	/** distance of the apex above the plane of the crown's base */
	axialHeight_mm: number;
	/** which way the labial face looks; default +z */
	labial?: '+z' | '-z';
}

export interface LineDrawingOptions {
	/** cells along the longer side of each view for outlines; default 1400 */
	resolution?: number;
	/** cells for telling what is hidden; default 900 */
	depthResolution?: number;
	/** how far a line may leave the true one, share of the tooth's longest extent; default 1 / 3000, at most 0.02 mm */
	tolerance?: number;
}

const FINEST_mm = 0.02;
const SLICES = 200;
/** Distance between dots where it is darkest, share of the longest extent. */
const DOT_SPACING = 1 / 110;
/** The same as a share of the root of the area seen: squat teeth take no more dots than slender ones. */
const DOT_SPACING_AREA = 1 / 60;

/** How dark each region is drawn. */
const TONES: Readonly<Record<Region, number>> = {
	enamel: 0,
	carina: 0,
	ridge: 0,
	root: 0,
	facet: 0.45,
	dentine: 0.3,
	pit: 0.8,
	pulp: 1,
};

/** Right, up, towards the viewer. */
const LIGHT = [-0.55, 0.5, 0.67] as const;
/** Cosine of the light's angle under which shade begins. */
const SHADE_FROM = 0.75;
/** How much the shade darkens each region: enamel is bright, a root is dull. */
const SHADES: Readonly<Record<Region, number>> = {
	enamel: 0.4,
	carina: 0.4,
	ridge: 0.4,
	root: 0.7,
	facet: 0,
	dentine: 0,
	pit: 0,
	pulp: 0,
};

/** Passes of smoothing before a line is looked at; borders of flat facets are exact already. */
const PASSES: Readonly<Record<LineKind, number>> = {
	outline: 0,
	fold: 4,
	base: 2,
	facet: 0,
	break: 0,
	rim: 2,
	edge: 5,
	ridge: 8,
};

/**
 * Draws a welded mesh in the tooth frame with lines: outline, folds, borders of regions and crests from three sides,
 * hidden parts left out, dots on worn and hollow faces, and the section half way up the crown.
 */
export function lineDrawing(
	mesh: TriMesh,
	facts: LineDrawingFacts,
	options: LineDrawingOptions = {},
): LineDrawing {
	const normals = vertexNormals(mesh);
	const { min, max } = bounds(mesh);
	const extent = Math.max(...max.map((x, k) => x - min[k]));
	const tolerance = Math.min(FINEST_mm, extent * (options.tolerance ?? 1 / 3000));
	const resolution = options.resolution ?? 1400;
	const surfaceLines = [...borderLines(mesh, normals), ...crestLines(mesh, SLICES)];
	const all = drawingAxes(facts.labial);
	const [side, front, tip] = DRAWN_VIEWS.map((name) => ({
		axes: all[name],
		map: depthMap(mesh, all[name], options.depthResolution ?? 900),
	}));
	const dotSpacing = Math.max(extent * DOT_SPACING, Math.sqrt(areaSeen(side.map)) * DOT_SPACING_AREA);
	const tooth = { mesh, normals, surfaceLines, tolerance, resolution, dotSpacing };
	return {
		side: view(tooth, side.axes, side.map),
		front: view(tooth, front.axes, front.map),
		tip: view(tooth, tip.axes, tip.map),
		section: cut(mesh, all.tip, facts.axialHeight_mm / 2, tolerance),
	};
}

const areaSeen = (map: DepthMap): number =>
	map.triangle.reduce((cells, triangle) => cells + (triangle < 0 ? 0 : 1), 0) * map.cell_mm ** 2;

interface Tooth {
	mesh: TriMesh;
	normals: Float32Array;
	/** those that are the same from every side */
	surfaceLines: readonly SurfaceLine[];
	/** mm */
	tolerance: number;
	resolution: number;
	/** mm */
	dotSpacing: number;
}

function view(tooth: Tooth, axes: DrawingAxes, map: DepthMap): DrawnView {
	const { mesh, normals, tolerance } = tooth;
	const lines: DrawnLine[] = outline(mesh, vec3.scale(axes.towards, -1), axes.up, {
		resolution: tooth.resolution,
		simplify_cells: 0,
	}).map(({ points }) => ({
		kind: 'outline',
		closed: true,
		points: rounded(simplifyLoop(points, tolerance), tolerance),
	}));
	const folds = foldLines(mesh, normals, axes.towards);
	const smooth = [...folds, ...tooth.surfaceLines].map((line) => ({
		...line,
		points: smoothLine(line.points, 3, line.closed, PASSES[line.kind]),
	}));
	for (const { kind, closed, points } of visibleLines(smooth, map, axes)) {
		const soft = smoothLine(points, 2, closed, 6);
		lines.push({
			kind,
			closed,
			points: rounded(
				closed ? simplifyLoop(Float64Array.from(soft), tolerance) : simplifyLine(soft, tolerance),
				tolerance,
			),
		});
	}
	const tone = toneOf(mesh, normals, axes);
	const dots = rounded(stipple(map, tone, tooth.dotSpacing), tolerance);
	return { ...box(lines.map(({ points }) => points)), lines, dots };
}

/** How dark each triangle is drawn: what it is, and the shade on the side away from the light (from the upper left). */
function toneOf(mesh: TriMesh, normals: Float32Array, axes: DrawingAxes): (triangle: number) => number {
	const light = vec3.normalise(
		vec3.add(
			vec3.add(vec3.scale(axes.right, LIGHT[0]), vec3.scale(axes.up, LIGHT[1])),
			vec3.scale(axes.towards, LIGHT[2]),
		),
	);
	const { indices, regions } = mesh;
	return (triangle) => {
		const region = REGIONS[regions ? regions[triangle] : 0];
		let lit = 0;
		for (let k = 0; k < 3; k++) {
			const v = indices[triangle * 3 + k] * 3;
			lit += (normals[v] * light[0] + normals[v + 1] * light[1] + normals[v + 2] * light[2]) / 3;
		}
		const shade = Math.min(1, Math.max(0, (SHADE_FROM - lit) / SHADE_FROM));
		return Math.min(1, TONES[region] + SHADES[region] * shade * shade);
	};
}

function cut(
	mesh: TriMesh,
	{ right, up, towards }: DrawingAxes,
	at: number,
	tolerance: number,
): DrawnSection | null {
	const loops = section(mesh, planeFrame([0, 0, 0], towards, right), at);
	if (!(loops[0]?.area > 0)) return null;
	const clean = loops.filter(({ area }) => area > loops[0].area * 1e-3).map(({ points }) => points);
	const { min, max } = box(clean);
	const side: [number, number] = [min[0], max[0]];
	// the front view has +z to the right, see `drawingAxes`
	const front: [number, number] = up[2] > 0 ? [min[1], max[1]] : [-max[1], -min[1]];
	return {
		at,
		min,
		max,
		side,
		front,
		loops: clean.map((points) => rounded(simplifyLoop(points, tolerance), tolerance)),
	};
}

function box(lines: ArrayLike<number>[]): { min: [number, number]; max: [number, number] } {
	const min: [number, number] = [Infinity, Infinity];
	const max: [number, number] = [-Infinity, -Infinity];
	for (const points of lines) {
		for (let i = 0; i < points.length; i++) {
			min[i % 2] = Math.min(min[i % 2], points[i]);
			max[i % 2] = Math.max(max[i % 2], points[i]);
		}
	}
	return min[0] <= max[0] ? { min, max } : { min: [0, 0], max: [0, 0] };
}

/** No -0, which JSON does not know; to the decimals that the tolerance calls for: what JSON would write in full is noise beyond that. */
function rounded(points: ArrayLike<number>, tolerance: number): number[] {
	const whole = 10 ** Math.max(0, Math.ceil(-Math.log10(tolerance / 2)));
	return Array.from(points, (x) => Math.round(x * whole) / whole + 0);
}
