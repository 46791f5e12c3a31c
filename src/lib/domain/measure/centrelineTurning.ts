import { planeFrame } from '../mesh/planeFrame';
import { polygonMoments } from '../mesh/polygonMoments';
import { section, type PlaneFrame, type Section, type SectionLoop } from '../mesh/section';
import type { TriMesh } from '../mesh/triMesh';
import { vec3, type Vec3 } from '../vec3';

/** stations of the centreline, fractions of axial height */
const STATIONS = [0.06, 0.14, 0.22, 0.3, 0.38, 0.46, 0.54, 0.62, 0.7, 0.78, 0.85, 0.91] as const;
const FEWEST = 7;
const ROUNDS = 3;
const DEGREE = 4;
/** first and last part of the line, by which its ends are judged */
const PART = 0.3;
/** More turning than this is no tooth's: the middles of the sections jump (a half circle; the most coiled of snakes' fangs and
 * tusk-like teeth stay below it: common practice, no source). */
const MOST_DEG = 180;
/** Farthest that the middles may lie from a smooth curve, root mean square over its length. */
const MOST_OFF = 0.02;

/** Why there is no turning: too few sections, or middles that make no line. */
export type NoCentreline = 'few-sections' | 'no-line';

/**
 * Total turning of the crown's centreline from base to apex, degrees; else why there is none.
 *
 * The centres of sections parallel to the base give a first line. Then every section is cut anew across the line itself,
 * because the middle of an oblique cut lies beside the axis of a tapering body. The turning is the sum of
 * the angles between successive directions of a smooth curve (a quartic in arc length) through the centres.
 */
export function centrelineTurning(
	mesh: TriMesh,
	base: PlaneFrame,
	apex: Vec3,
	heights: Float64Array,
): number | NoCentreline {
	const height = vec3.dot(vec3.subtract(apex, base.origin), base.normal);
	let centres: Vec3[] = [];
	for (const at of STATIONS) {
		const plane = { ...base, origin: vec3.add(base.origin, vec3.scale(base.normal, at * height)) };
		const centre = centreOf(section(mesh, base, at * height, heights), plane, base, 0);
		if (centre) centres.push(centre);
	}
	if (centres.length < FEWEST) return 'few-sections';
	let curve = smoothCurve(centres);
	for (let round = 0; round < ROUNDS; round++) {
		const next: Vec3[] = [];
		centres.forEach((centre, i) => {
			const plane = planeFrame(centre, curve.direction(curve.at[i]));
			const found = centreOf(section(mesh, plane, 0), plane, base, height * 0.005);
			if (found && vec3.distance(found, centre) < height * 0.1) next.push(found);
		});
		if (next.length < FEWEST) break;
		centres = next;
		curve = smoothCurve(centres);
	}
	const length = curve.at[curve.at.length - 1];
	const steps = 48;
	let total = 0;
	let early = 0;
	let late = 0;
	let before = curve.direction(0);
	for (let i = 1; i <= steps; i++) {
		const now = curve.direction((length * i) / steps);
		const turn = Math.atan2(vec3.norm(vec3.cross(before, now)), vec3.dot(before, now));
		total += turn;
		if (i <= steps * PART) early += turn;
		if (i > steps * (1 - PART)) late += turn;
		before = now;
	}
	// below the first section and above the last the line turns on as it does next to them
	const below = vec3.dot(vec3.subtract(centres[0], base.origin), base.normal) / (length * PART);
	const above = vec3.distance(centres[centres.length - 1], apex) / (length * PART);
	const turning = ((total + early * below + late * above) * 180) / Math.PI;
	return turning <= MOST_DEG && curve.off <= MOST_OFF * length ? turning : 'no-line';
}

/**
 * Centre of the outer loop nearest to the plane's origin, in space. Null when there is none, or when the cut leaves the
 * crown through its base (comes below `floor` over the base plane): half a section has no centre.
 */
function centreOf(loops: Section, plane: PlaneFrame, base: PlaneFrame, floor: number): Vec3 | null {
	let best: SectionLoop | null = null;
	let nearest = Infinity;
	for (const loop of loops) {
		if (loop.hole || loop.area < (loops[0].area || 0) * 0.01) continue;
		const { centroid } = polygonMoments(loop.points);
		const d = Math.hypot(centroid[0], centroid[1]);
		if (d >= nearest) continue;
		nearest = d;
		best = loop;
	}
	if (!best) return null;
	const { points } = best;
	const level = vec3.dot(vec3.subtract(plane.origin, base.origin), base.normal);
	const riseU = vec3.dot(plane.u, base.normal);
	const riseV = vec3.dot(plane.v, base.normal);
	for (let i = 0; i < points.length; i += 2) {
		if (level + points[i] * riseU + points[i + 1] * riseV < floor) return null;
	}
	const [x, y] = polygonMoments(points).centroid;
	return vec3.add(plane.origin, vec3.add(vec3.scale(plane.u, x), vec3.scale(plane.v, y)));
}

interface SmoothCurve {
	/** arc length of each point from the first */
	at: Float64Array;
	/** root mean square distance of the points from it */
	off: number;
	/** unit direction at an arc length */
	direction(s: number): Vec3;
}

function smoothCurve(points: Vec3[]): SmoothCurve {
	const at = new Float64Array(points.length);
	for (let i = 1; i < points.length; i++) at[i] = at[i - 1] + vec3.distance(points[i], points[i - 1]);
	const length = at[at.length - 1] || 1;
	const t = at.map((s) => s / length);
	const [x, y, z] = [0, 1, 2].map((k) =>
		polynomialFit(
			t,
			Float64Array.from(points, (p) => p[k]),
		),
	);
	const value = (c: Float64Array, s: number): number => c.reduceRight((sum, factor) => sum * s + factor, 0);
	const squares = points.map(
		(p, i) => (p[0] - value(x, t[i])) ** 2 + (p[1] - value(y, t[i])) ** 2 + (p[2] - value(z, t[i])) ** 2,
	);
	const slope = (c: Float64Array, s: number): number => {
		let sum = 0;
		for (let k = DEGREE; k > 0; k--) sum = sum * s + k * c[k];
		return sum;
	};
	return {
		at,
		off: Math.sqrt(squares.reduce((a, b) => a + b) / squares.length),
		direction(s) {
			const d: Vec3 = [slope(x, s / length), slope(y, s / length), slope(z, s / length)];
			return vec3.norm(d) > 0 ? vec3.normalise(d) : [0, 1, 0];
		},
	};
}

/** Least squares polynomial, lowest power first, by the normal equations (t within 0 .. 1, so they are sound). */
function polynomialFit(t: Float64Array, value: Float64Array): Float64Array {
	const n = DEGREE + 1;
	const m = Array.from({ length: n }, () => new Float64Array(n + 1));
	for (let i = 0; i < t.length; i++) {
		for (let a = 0; a < n; a++) {
			for (let b = 0; b < n; b++) m[a][b] += t[i] ** (a + b);
			m[a][n] += t[i] ** a * value[i];
		}
	}
	for (let i = 0; i < n; i++) {
		let pivot = i;
		for (let k = i + 1; k < n; k++) if (Math.abs(m[k][i]) > Math.abs(m[pivot][i])) pivot = k;
		[m[i], m[pivot]] = [m[pivot], m[i]];
		for (let k = 0; k < n; k++) {
			if (k === i) continue;
			const f = m[k][i] / m[i][i];
			for (let c = i; c <= n; c++) m[k][c] -= f * m[i][c];
		}
	}
	return Float64Array.from(m, (row, i) => row[n] / row[i]);
}
