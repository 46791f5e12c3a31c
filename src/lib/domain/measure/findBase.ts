import { convexHull2d } from '../mesh/convexHull2d';
import { fitPlane } from '../mesh/fitPlane';
import { planeFrame } from '../mesh/planeFrame';
import { sampleTriangles } from '../mesh/sampleTriangles';
import { polygonMoments } from '../mesh/polygonMoments';
import { polygonArea } from '../mesh/polygonArea';
import { principalAxes, type PrincipalAxes } from '../mesh/principalAxes';
import type { PlaneFrame } from '../mesh/section';
import { surfaceArea } from '../mesh/surfaceArea';
import type { Topology } from '../mesh/topology';
import type { TriMesh } from '../mesh/triMesh';
import { vec3, type Vec3 } from '../vec3';

export interface FoundBase {
	/** origin on the base plane, normal towards the tip */
	frame: PlaneFrame;
	/** outline of the flat end in the frame, convex, x, y pairs; null when the piece has no flat end */
	outline: Float64Array | null;
	/** cut = flat closed end, rim = flat opening, broken = rough closed end, end = none of them: the blunt end of the whole piece */
	kind: 'cut' | 'rim' | 'broken' | 'end';
}

interface Candidate {
	frame: PlaneFrame;
	outline: Float64Array;
	kind: 'cut' | 'rim' | 'broken';
	score: number;
	/** area of the outline over that of the whole piece's shadow along the normal */
	share: number;
}

/** directions of normals are counted in a grid of this many cells a side over the unfolded octahedron */
const GRID = 48;
/** flat ends smaller than this share of the piece's shadow along them are not the crown's base */
const LEAST_SHARE = 0.15;
/** least variance of the surface along the normal of its base, over that along the longest axis */
const LEAST_VARIANCE = 0.2;
const MOST_OF_IT = 0.6;
/** length over width of a base that a very low crown may stand on */
const ROUNDISH = 1.6;
/** a flat end with this share of the piece's shadow is surely its base */
const WHOLE_SHARE = 0.75;
/** least share of its convex outline that a flat end must fill: the rim round a wide pulp opening is thin */
const LEAST_FILLED = 0.08;
/** How flat an end is that is looked for: first a clean one, then a rough break. */
interface Flatness {
	/** share of the longest extent that it may depart from its plane */
	flat: number;
	/** squared cosine of the angle within which its triangles face along it */
	cos2Facing: number;
	/** least variance of the surface along its normal, over that along the longest axis */
	variance: number;
	/** share of the longest extent within which its triangles are looked for at first */
	within: number;
}
/** 20 degrees: noise tilts small triangles */
const CLEAN: Flatness = { flat: 0.004, cos2Facing: 0.883, within: 0.02, variance: 0 };
/** 60 degrees; the gently bulging side of a long piece is no break, but a low crown may stand on a round one */
const ROUGH: Flatness = { flat: 0.03, cos2Facing: 0.25, within: 0.06, variance: 0.1 };
/** how far the rim of an opening may depart from its plane, and the piece reach beyond it, shares of the longest extent */
const EVEN = { rms: 0.03, beyond: 0.06 };
const JAGGED = { rms: 0.05, beyond: 0.09 };
/** triangles that are enough to find the end of the piece; its plane is then fitted to all of them */
const ENOUGH_TRIANGLES = 8_000;
/** at most this many directions are tried */
const MOST_DIRECTIONS = 32;

/**
 * Finds the plane at which a crown ends, in any position: the largest flat face, or the largest flat opening,
 * that has the whole piece on one side. Long pieces prefer a face across their length, so that the flat lip side
 * of a D-shaped crown or a steep wear facet is not taken for the base.
 */
export function findBase(mesh: TriMesh, topology: Topology): FoundBase | null {
	const axes = principalAxes(mesh);
	const size = extentAlong(mesh, axes.axes[0]).size;
	if (!(size > 0)) return null;
	const rough = sampleTriangles(mesh, ENOUGH_TRIANGLES);
	const least = rough === mesh ? 0 : surfaceArea(mesh) / ENOUGH_TRIANGLES;
	const scene: Scene = { mesh: rough, normals: faceNormals(rough), axes, size, least, ...CLEAN };
	const bestOf = (candidates: Candidate[]): Candidate | null =>
		candidates.reduce<Candidate | null>((a, b) => (a && a.score >= b.score ? a : b), null);
	let best = bestOf([...cutEnds(scene), ...rims(scene, mesh, topology)]);
	if (!best || best.share < WHOLE_SHARE) {
		// nothing clean, or only a flat part of a wall: a rough break may be more
		const broken = bestOf(cutEnds({ ...scene, ...ROUGH }));
		if (broken && broken.score > 2 * (best?.score ?? 0)) {
			return { frame: broken.frame, outline: broken.outline, kind: 'broken' };
		}
	}
	if (!best) return bluntEnd(mesh, axes);
	if (best.kind === 'cut' && rough !== mesh) {
		const full: Scene = { mesh, normals: faceNormals(mesh), axes, size, least: 0, ...CLEAN };
		const { origin, normal } = best.frame;
		const outward = vec3.scale(normal, -1);
		best = flatFace(full, outward, vec3.dot(origin, outward), size * CLEAN.flat * 1.5) ?? best;
	}
	return { frame: best.frame, outline: best.outline, kind: best.kind };
}

/** What the search looks at: the mesh or an even sample of its triangles. */
interface Scene extends Flatness {
	mesh: TriMesh;
	/** normal times area per triangle */
	normals: Float64Array;
	axes: PrincipalAxes;
	/** extent along the longest axis, mm */
	size: number;
	/** surface that even the smallest triangle of a sample stands for; 0 when all are there */
	least: number;
}

function extentAlong(mesh: TriMesh, d: Vec3): { low: number; high: number; size: number } {
	const p = mesh.positions;
	let low = Infinity;
	let high = -Infinity;
	for (let i = 0; i < p.length; i += 3) {
		const h = p[i] * d[0] + p[i + 1] * d[1] + p[i + 2] * d[2];
		if (h < low) low = h;
		if (h > high) high = h;
	}
	return { low, high, size: high - low };
}

function varianceAlong({ covariance: c }: PrincipalAxes, n: Vec3): number {
	return (
		c[0] * n[0] * n[0] +
		c[1] * n[1] * n[1] +
		c[2] * n[2] * n[2] +
		2 * (c[3] * n[0] * n[1] + c[4] * n[0] * n[2] + c[5] * n[1] * n[2])
	);
}

/** Length over width of an outline, by its second moments. */
function elongation(outline: Float64Array): number {
	const { xx, yy, xy } = polygonMoments(outline);
	const [middle, spread] = [(xx + yy) / 2, Math.hypot((xx - yy) / 2, xy)];
	return Math.sqrt((middle + spread) / Math.max(1e-12 * middle, middle - spread));
}

/** Area of the convex outline of all vertices seen along the frame's normal. */
function shadowArea(mesh: TriMesh, frame: PlaneFrame): number {
	return Math.abs(polygonArea(convexHull2d(flatten(mesh.positions, frame))));
}

function flatten(points: ArrayLike<number>, { origin: o, u, v }: PlaneFrame): Float64Array {
	const out = new Float64Array((points.length / 3) * 2);
	for (let i = 0, k = 0; i < points.length; i += 3, k += 2) {
		const x = points[i] - o[0];
		const y = points[i + 1] - o[1];
		const z = points[i + 2] - o[2];
		out[k] = x * u[0] + y * u[1] + z * u[2];
		out[k + 1] = x * v[0] + y * v[1] + z * v[2];
	}
	return out;
}

function judge(
	{ mesh, axes, variance: leastVariance }: Scene,
	points: Float64Array,
	point: Vec3,
	inward: Vec3,
	kind: Candidate['kind'],
): Candidate | null {
	const frame = planeFrame(point, inward, axes.axes[0]);
	const outline = convexHull2d(flatten(points, frame));
	const area = Math.abs(polygonArea(outline));
	const share = area / shadowArea(mesh, frame);
	const variance = varianceAlong(axes, frame.normal);
	if (!(share > LEAST_SHARE)) return null;
	if (variance < leastVariance * axes.variances[0] && elongation(outline) > ROUNDISH) return null;
	// across the piece's length, or under most of it: a facet on the side of a rooted tooth is neither
	if (variance < LEAST_VARIANCE * axes.variances[0] && share < MOST_OF_IT) return null;
	return { frame, outline, kind, score: area ** 1.5 * variance, share };
}

function faceNormals(mesh: TriMesh): Float64Array {
	const { positions: p, indices } = mesh;
	const out = new Float64Array(indices.length);
	for (let k = 0; k < indices.length; k += 3) {
		const a = indices[k] * 3;
		const b = indices[k + 1] * 3;
		const c = indices[k + 2] * 3;
		const ux = p[b] - p[a];
		const uy = p[b + 1] - p[a + 1];
		const uz = p[b + 2] - p[a + 2];
		const vx = p[c] - p[a];
		const vy = p[c + 1] - p[a + 1];
		const vz = p[c + 2] - p[a + 2];
		out[k] = (uy * vz - uz * vy) / 2;
		out[k + 1] = (uz * vx - ux * vz) / 2;
		out[k + 2] = (ux * vy - uy * vx) / 2;
	}
	return out;
}

/** Cell of the octahedral grid that a vector points into; a normal and its opposite share one. */
function cellOf(x: number, y: number, z: number): number {
	if (y < 0 || (y === 0 && (x < 0 || (x === 0 && z < 0)))) {
		x = -x;
		y = -y;
		z = -z;
	}
	const sum = Math.abs(x) + y + Math.abs(z);
	const s = x / sum;
	const t = z / sum;
	const i = Math.min(GRID - 1, Math.floor(((s + t + 1) / 2) * GRID));
	const j = Math.min(GRID - 1, Math.floor(((s - t + 1) / 2) * GRID));
	return i * GRID + j;
}

function cutEnds(scene: Scene): Candidate[] {
	const { normals, axes, mesh, size, within } = scene;
	const bins = new Float64Array(GRID * GRID);
	let total = 0;
	for (let k = 0; k < normals.length; k += 3) {
		const area = Math.hypot(normals[k], normals[k + 1], normals[k + 2]);
		if (!(area > 0)) continue;
		bins[cellOf(normals[k], normals[k + 1], normals[k + 2])] += area;
		total += area;
	}
	const order = Array.from(bins.keys()).filter((cell) => bins[cell] > total * 0.0015);
	order.sort((a, b) => bins[b] - bins[a]);
	const directions: Vec3[] = [...axes.axes];
	for (const cell of order) {
		if (directions.length >= MOST_DIRECTIONS) break;
		const a = ((Math.floor(cell / GRID) + 0.5) / GRID) * 2 - 1;
		const b = (((cell % GRID) + 0.5) / GRID) * 2 - 1;
		const x = (a + b) / 2;
		const z = (a - b) / 2;
		const direction = vec3.normalise([x, Math.max(0, 1 - Math.abs(x) - Math.abs(z)), z]);
		if (directions.some((known) => Math.abs(vec3.dot(known, direction)) > 0.992)) continue;
		directions.push(direction);
	}
	const found: Candidate[] = [];
	const cosNear = Math.cos((12 * Math.PI) / 180);
	for (const start of directions) {
		let d = start;
		// settle on the mean normal of the faces that look this way
		for (let round = 0; round < 2; round++) {
			let sx = 0;
			let sy = 0;
			let sz = 0;
			for (let k = 0; k < normals.length; k += 3) {
				const x = normals[k];
				const y = normals[k + 1];
				const z = normals[k + 2];
				const along = x * d[0] + y * d[1] + z * d[2];
				const area2 = x * x + y * y + z * z;
				if (along * along < cosNear * cosNear * area2) continue;
				const sign = along < 0 ? -1 : 1;
				sx += sign * x;
				sy += sign * y;
				sz += sign * z;
			}
			if (sx * sx + sy * sy + sz * sz > 0) d = vec3.normalise([sx, sy, sz]);
		}
		for (const outward of [d, vec3.scale(d, -1)]) {
			const level = extentAlong(mesh, outward).high;
			const candidate = flatFace(scene, outward, level, size * within);
			if (candidate) found.push(candidate);
		}
	}
	return found;
}

/** The flat face that has the whole mesh below it, near a given plane; null when there is none worth the name. */
function flatFace(scene: Scene, from: Vec3, fromLevel: number, within: number): Candidate | null {
	const { size, mesh, flat } = scene;
	let outward = from;
	let level = fromLevel;
	let tolerance = within;
	for (let round = 0; round < 4; round++) {
		const face = facesNear(scene, outward, level, tolerance);
		if (face.corners.length < 9) return null;
		const plane = fitPlane(face.corners);
		outward = vec3.dot(plane.normal, outward) < 0 ? vec3.scale(plane.normal, -1) : plane.normal;
		level = vec3.dot(plane.point, outward);
		if (vec3.dot(outward, from) < 0.9) return null;
		// the next rounds keep to the face itself: walls that meet it at a low angle drop out
		tolerance = Math.min(size * flat, Math.max(plane.rms * 3, size * 1e-5));
	}
	if (extentAlong(mesh, outward).high - level > size * flat * 1.5) return null;
	const wide = facesNear(scene, outward, level, size * flat * 2);
	const narrow = facesNear(scene, outward, level, size * flat * 0.5);
	// a flat face is all there in a slice a quarter as thick; a bulge loses half or more
	if (narrow.area < 0.65 * wide.area || narrow.corners.length < 9) return null;
	const corners = Float64Array.from(narrow.corners);
	const middle = fitPlane(corners).point;
	const origin = vec3.add(middle, vec3.scale(outward, level - vec3.dot(middle, outward)));
	const candidate = judge(scene, corners, origin, vec3.scale(outward, -1), 'cut');
	if (!candidate) return null;
	// two far bulges that touch one plane span a wide outline with nothing in it
	return narrow.area < LEAST_FILLED * Math.abs(polygonArea(candidate.outline)) ? null : candidate;
}

/** Triangles that lie within a tolerance of a plane and face along it: their corners and their area. */
function facesNear(
	{ normals, mesh, least, cos2Facing }: Scene,
	outward: Vec3,
	level: number,
	tolerance: number,
): { corners: number[]; area: number } {
	const { indices, positions: p } = mesh;
	const [ox, oy, oz] = outward;
	// heights first, once for each corner: nearly all triangles lie far from the plane
	const off = new Float64Array(p.length / 3);
	for (let i = 0, v = 0; v < off.length; i += 3, v++) {
		off[v] = Math.abs(p[i] * ox + p[i + 1] * oy + p[i + 2] * oz - level);
	}
	const corners: number[] = [];
	let area = 0;
	for (let k = 0; k < indices.length; k += 3) {
		if (off[indices[k]] > tolerance || off[indices[k + 1]] > tolerance || off[indices[k + 2]] > tolerance) {
			continue;
		}
		const nx = normals[k];
		const ny = normals[k + 1];
		const nz = normals[k + 2];
		const along = nx * ox + ny * oy + nz * oz;
		const area2 = nx * nx + ny * ny + nz * nz;
		// winding may be wrong in a scan: either side of the face counts
		if (along * along < cos2Facing * area2) continue;
		area += Math.max(least, Math.sqrt(area2));
		for (let c = k; c < k + 3; c++) {
			const i = indices[c] * 3;
			corners.push(p[i], p[i + 1], p[i + 2]);
		}
	}
	return { corners, area };
}

function rims(scene: Scene, mesh: TriMesh, topology: Topology): Candidate[] {
	const { size } = scene;
	const { positions: p } = mesh;
	const found: Candidate[] = [];
	for (const loop of topology.boundaryLoops.slice(0, 8)) {
		if (loop.length < 3) continue;
		const points = new Float64Array(loop.length * 3);
		loop.forEach((vertex, i) => points.set(p.subarray(vertex * 3, vertex * 3 + 3), i * 3));
		const plane = fitPlane(points);
		if (plane.rms > size * JAGGED.rms) continue;
		const level = vec3.dot(plane.point, plane.normal);
		const { low, high } = extentAlong(mesh, plane.normal);
		const inward = high - level > level - low ? plane.normal : vec3.scale(plane.normal, -1);
		const beyond = Math.min(high - level, level - low);
		if (beyond > size * JAGGED.beyond) continue;
		const isFlat = plane.rms <= size * EVEN.rms && beyond <= size * EVEN.beyond;
		const candidate = judge(scene, points, plane.point, inward, isFlat ? 'rim' : 'broken');
		// a jagged opening is the base only where most of the piece stands on it
		if (candidate && (isFlat || candidate.share >= MOST_OF_IT)) found.push(candidate);
	}
	return found;
}

/** No flat end: the longest axis, and the plane that touches the blunter of its ends. */
function bluntEnd(mesh: TriMesh, axes: PrincipalAxes): FoundBase {
	const axis = axes.axes[0];
	const { low, high, size } = extentAlong(mesh, axis);
	const p = mesh.positions;
	/** shadow of the last tenth at each end */
	const ends = [-1, 1].map((sign) => {
		const points: number[] = [];
		const frame = planeFrame(axes.centroid, axis);
		for (let i = 0; i < p.length; i += 3) {
			const h = p[i] * axis[0] + p[i + 1] * axis[1] + p[i + 2] * axis[2];
			if (sign < 0 ? h - low < size * 0.12 : high - h < size * 0.12) points.push(p[i], p[i + 1], p[i + 2]);
		}
		return Math.abs(polygonArea(convexHull2d(flatten(points, frame))));
	});
	const baseIsLow = ends[0] >= ends[1];
	const normal = baseIsLow ? axis : vec3.scale(axis, -1);
	const level = baseIsLow ? low : high;
	const shift = level - vec3.dot(axes.centroid, axis);
	return {
		frame: planeFrame(vec3.add(axes.centroid, vec3.scale(axis, shift)), normal, axes.axes[1]),
		outline: null,
		kind: 'end',
	};
}
