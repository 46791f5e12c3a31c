import { fitPlane } from '../mesh/fitPlane';
import type { PlaneFrame } from '../mesh/section';
import type { Topology } from '../mesh/topology';
import type { TriMesh } from '../mesh/triMesh';
import { vec3, type Vec3 } from '../vec3';
import type { FacetPlace, WornFacet } from './crownMeasures';
import { median } from './median';
import { flatPatch, type FacePlanes, type Taken } from './flatPatch';

/** What makes a flat patch a worn facet; ours. */
export const FACET_LIMITS = {
	/** area over that of the crown's whole surface, at least */
	share: 0.004,
	/** the same for a patch that is the top of the crown and looks upwards: little of a tooth is worn to blunt its tip */
	tipShare: 0.0005,
	/** lowest place of such a patch, fraction of axial height, and least cosine of its normal to the axis */
	tipFrom: 0.93,
	tipCos: 0.8,
	/** edges of its border, at least: a flat between a few triangles is the mesh's, not the tooth's */
	borderEdges: 12,
	/** the surface turns by this much at the border, degrees: more than within a patch */
	crisp_deg: 2.5,
	/** on this share of the border's length: a flat face of the crown's own form runs out smoothly above or below */
	crispShare: 0.85,
	/** breadth (four times its area over its border) over that of the triangles outside the border, at least: one column of a
	 * mesh's grid is no facet */
	breadth: 4,
	/** area over that of a circle with the same border, at least: an ellipse five times as long as wide has 0.45 */
	compact: 0.25,
	/** height over the base that it stays above, over the crown's: a flat face of the form comes down to the base */
	clearOfBase: 0.03,
} as const;

/** A worn facet, and where it lies. */
export interface FoundFacet extends WornFacet {
	/** middle of its corners */
	middle: Vec3;
	/** greatest distance of a corner from the middle, mm */
	reach_mm: number;
	/** heights between which it lies, fractions of axial height */
	from: number;
	to: number;
}

/** Neighbours that turn by less than this lie in one plane: where to begin, degrees. */
const SEED_DEG = 0.25;

/** Flat worn patches of the crown, largest first. */
export function wornFacets(
	mesh: TriMesh,
	{ twin }: Topology,
	frame: PlaneFrame,
	height_mm: number,
	heights: Float64Array,
	labialSide: 1 | -1,
): FoundFacet[] {
	const faces = facePlanes(mesh);
	const { indices } = mesh;
	const count = indices.length / 3;
	let surface = 0;
	const onCrown = new Uint8Array(count);
	for (let t = 0; t < count; t++) {
		const k = t * 3;
		const low = Math.min(heights[indices[k]], heights[indices[k + 1]], heights[indices[k + 2]]);
		if (low < FACET_LIMITS.clearOfBase * height_mm) continue;
		onCrown[t] = 1;
		surface += faces.area[t];
	}
	// inside out: normals of the whole surface then look the other way
	const sign = facesOutward(mesh, faces) ? 1 : -1;
	const taken: Taken = { owner: new Uint32Array(count), last: 0 };
	/** triangles of patches that were judged */
	const judged = new Uint8Array(count);
	const found: FoundFacet[] = [];
	/** area that a patch needs which begins at a triangle, mm2 */
	const least = (t: number): number => {
		const i = t * 3;
		const n = faces.normals;
		const up = Math.abs(n[i] * frame.normal[0] + n[i + 1] * frame.normal[1] + n[i + 2] * frame.normal[2]);
		const low = Math.min(heights[indices[i]], heights[indices[i + 1]], heights[indices[i + 2]]);
		const isTip = up > FACET_LIMITS.tipCos && low > FACET_LIMITS.tipFrom * height_mm;
		return (isTip ? FACET_LIMITS.tipShare : FACET_LIMITS.share) * surface;
	};
	const cosSeed = Math.cos((SEED_DEG * Math.PI) / 180);
	for (let t = 0; t < count; t++) {
		if (taken.owner[t] > 0 || !onCrown[t] || !hasFlatNeighbour(t, twin, faces, cosSeed)) continue;
		const first = flatPatch(mesh, twin, faces, t, height_mm, taken);
		if (first.area < 0.5 * least(t)) continue;
		// a small triangle tilts: again from the largest one, with the plane of all
		const largest = first.triangles.reduce((a, b) => (faces.area[b] > faces.area[a] ? b : a));
		const patch = flatPatch(
			mesh,
			twin,
			faces,
			largest,
			height_mm,
			taken,
			planeOf(first.triangles, mesh, faces),
		);
		if (judged[largest] || patch.area < least(largest)) continue;
		for (const triangle of patch.triangles) judged[triangle] = 1;
		const facet = judge(patch.triangles, mesh, twin, faces, heights, height_mm);
		if (!facet) continue;
		const normal = vec3.scale(facet.normal, sign);
		found.push({ ...facet, normal, where: placeOf(normal, frame, labialSide) });
	}
	return found.sort((a, b) => b.area_mm2 - a.area_mm2);
}

/** Plane through the corners of a patch, facing as its triangles do. */
function planeOf(
	triangles: readonly number[],
	{ indices, positions: p }: TriMesh,
	{ normals, area }: FacePlanes,
): { point: Vec3; normal: Vec3 } {
	const corners: number[] = [];
	let sum: Vec3 = [0, 0, 0];
	for (const t of triangles) {
		sum = vec3.add(sum, vec3.scale([normals[t * 3], normals[t * 3 + 1], normals[t * 3 + 2]], area[t]));
		for (let k = t * 3; k < t * 3 + 3; k++) {
			const v = indices[k] * 3;
			corners.push(p[v], p[v + 1], p[v + 2]);
		}
	}
	const { point, normal } = fitPlane(corners);
	return { point, normal: vec3.dot(normal, sum) < 0 ? vec3.scale(normal, -1) : normal };
}

/** Border and height of a patch decide whether it is a facet. */
function judge(
	triangles: readonly number[],
	mesh: TriMesh,
	twin: Int32Array,
	{ normals, area }: FacePlanes,
	heights: Float64Array,
	height_mm: number,
): Omit<FoundFacet, 'where'> | null {
	const { indices, positions: p } = mesh;
	const inside = new Set(triangles);
	let sum: Vec3 = [0, 0, 0];
	let total = 0;
	let [low, high] = [Infinity, -Infinity];
	let middle: Vec3 = [0, 0, 0];
	for (const t of triangles) {
		const n: Vec3 = [normals[t * 3], normals[t * 3 + 1], normals[t * 3 + 2]];
		sum = vec3.add(sum, vec3.scale(n, area[t]));
		total += area[t];
		for (let k = t * 3; k < t * 3 + 3; k++) {
			const v = indices[k];
			low = Math.min(low, heights[v]);
			high = Math.max(high, heights[v]);
			middle = vec3.add(
				middle,
				vec3.scale([p[v * 3], p[v * 3 + 1], p[v * 3 + 2]], 1 / (3 * triangles.length)),
			);
		}
	}
	if (low < FACET_LIMITS.clearOfBase * height_mm) return null;
	const normal = vec3.normalise(sum);
	const cosCrisp = Math.cos((FACET_LIMITS.crisp_deg * Math.PI) / 180);
	let border = 0;
	let crisp = 0;
	let edges = 0;
	let reach = 0;
	const outside: number[] = [];
	for (const t of triangles) {
		for (let k = t * 3; k < t * 3 + 3; k++) {
			const other = twin[k] < 0 ? -1 : (twin[k] / 3) | 0;
			if (inside.has(other)) continue;
			const a = indices[k] * 3;
			const b = indices[k % 3 === 2 ? k - 2 : k + 1] * 3;
			const length = Math.hypot(p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]);
			border += length;
			edges++;
			reach = Math.max(reach, Math.hypot(p[a] - middle[0], p[a + 1] - middle[1], p[a + 2] - middle[2]));
			if (other < 0) continue;
			const turn =
				normals[other * 3] * normal[0] +
				normals[other * 3 + 1] * normal[1] +
				normals[other * 3 + 2] * normal[2];
			if (turn < cosCrisp) crisp += length;
			outside.push((2 * area[other]) / length);
		}
	}
	if (edges < FACET_LIMITS.borderEdges || crisp < FACET_LIMITS.crispShare * border) return null;
	if (4 * Math.PI * total < FACET_LIMITS.compact * border * border) return null;
	if ((4 * total) / border < FACET_LIMITS.breadth * median(outside)) return null;
	return { area_mm2: total, normal, middle, reach_mm: reach, from: low / height_mm, to: high / height_mm };
}

function placeOf(normal: Vec3, frame: PlaneFrame, labialSide: 1 | -1): FacetPlace {
	const towards: [FacetPlace, number][] = [
		['apical', vec3.dot(normal, frame.normal)],
		['distal', vec3.dot(normal, frame.u)],
		['mesial', -vec3.dot(normal, frame.u)],
		['labial', labialSide * vec3.dot(normal, frame.v)],
		['lingual', -labialSide * vec3.dot(normal, frame.v)],
	];
	return towards.reduce((best, next) => (next[1] > best[1] ? next : best))[0];
}

function hasFlatNeighbour(t: number, twin: Int32Array, { normals }: FacePlanes, cosSeed: number): boolean {
	for (let k = t * 3; k < t * 3 + 3; k++) {
		if (twin[k] < 0) continue;
		const o = ((twin[k] / 3) | 0) * 3;
		const i = t * 3;
		if (normals[i] * normals[o] + normals[i + 1] * normals[o + 1] + normals[i + 2] * normals[o + 2] > cosSeed)
			return true;
	}
	return false;
}

/** Whether normals look out of the body rather than into it: by the sign of the enclosed volume. */
function facesOutward(mesh: TriMesh, { normals, area }: FacePlanes): boolean {
	const { indices, positions: p } = mesh;
	const [ox, oy, oz] = [p[0], p[1], p[2]];
	let volume = 0;
	for (let t = 0; t < area.length; t++) {
		const v = indices[t * 3] * 3;
		const i = t * 3;
		volume +=
			area[t] *
			((p[v] - ox) * normals[i] + (p[v + 1] - oy) * normals[i + 1] + (p[v + 2] - oz) * normals[i + 2]);
	}
	return volume >= 0;
}

function facePlanes({ positions: p, indices }: TriMesh): FacePlanes {
	const count = indices.length / 3;
	const normals = new Float32Array(count * 3);
	const area = new Float64Array(count);
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
		const x = uy * vz - uz * vy;
		const y = uz * vx - ux * vz;
		const z = ux * vy - uy * vx;
		const length = Math.sqrt(x * x + y * y + z * z);
		area[k / 3] = length / 2;
		if (!(length > 0)) continue;
		normals[k] = x / length;
		normals[k + 1] = y / length;
		normals[k + 2] = z / length;
	}
	return { normals, area };
}
