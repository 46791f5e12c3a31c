import type { Region, TriMesh } from '../mesh/triMesh';
import { skin, type Ring } from '../tooth/skin';
import type { LifeForm } from './lifeForm';

/** How much of a tooth there is. Depths are measured from the tip downwards, mm. */
export interface Growth {
	/** depth down to which hard tissue has formed or is still there */
	depth_mm: number;
	/** how far the wall has thickened, 0 (a shell) .. 1 */
	filled: number;
	/** unevenness of a resorbed end, mm; 0 = even */
	bays_mm: number;
	/** space that the successor has taken, in this tooth's frame; null = none */
	taken: Taken | null;
}

/** At a height: an ellipse square to the axis inside which nothing of the old tooth is left, or null. */
export type Taken = (y_mm: number) => { z_mm: number; halfLength_mm: number; halfWidth_mm: number } | null;

export interface GrowDetail {
	columns: number;
	crownRows: number;
	rootRows: number;
	innerRows: number;
}

/** About 3,700 triangles a tooth. */
export const GROW_DETAIL: GrowDetail = { columns: 44, crownRows: 14, rootRows: 14, innerRows: 14 };

/** Least wall that is left standing, mm per mm of radius; thinner counts as gone. */
const LEAST_WALL = 0.04;
/** A crown keeps this much of its radius, whatever happens below it. */
const CROWN_WALL = 0.14;
/** An opening in the wall widens downwards at least this much: height over width. */
const OPENING_SLOPE = 2.2;

/** Outer half sizes at a depth from the tip, mm. */
export function outerAt(form: LifeForm, depth_mm: number): { halfLength_mm: number; halfWidth_mm: number } {
	const { crownHeight_mm: high, rootLength_mm: root, taper, swelling } = form;
	const share =
		depth_mm <= high
			? Math.max(0, depth_mm / high) ** taper
			: rootShare(Math.min(1, (depth_mm - high) / root), swelling);
	return { halfLength_mm: form.halfLength_mm * share, halfWidth_mm: form.halfWidth_mm * share };
}

const rootShare = (v: number, swelling: number): number =>
	1 + (swelling - 1) * Math.sin(Math.PI * Math.min(1, v * 0.8 + 0.06) ** 0.9) - 0.34 * v ** 3;

/** How far the axis leans at a depth, mm (- = tongue side). */
export function leanAt(form: LifeForm, depth_mm: number): number {
	const up = Math.max(0, 1 - depth_mm / form.crownHeight_mm);
	return -form.lean_mm * up * up;
}

/** Closed mesh of a tooth at some growth, tooth frame (crown's base at y = 0). Always a hollow cup, open below. */
export function growTooth(form: LifeForm, growth: Growth, detail: GrowDetail = GROW_DETAIL): TriMesh {
	const { columns: n, crownRows, rootRows, innerRows } = detail;
	const { crownHeight_mm: high } = form;
	const { depth_mm: deep, filled, taken } = growth;
	const angles = Array.from({ length: n }, (_, j) => (2 * Math.PI * (j + 0.5)) / n);
	const pulpTop_mm = Math.min(deep, high) * (0.3 + 0.35 * filled);
	const opening = 0.84 - 0.42 * filled;

	const outer = (j: number, depth: number): number => radius(outerAt(form, depth), angles[j]);
	const inner = (j: number, depth: number): number => {
		const q = Math.max(0, Math.min(1, (depth - pulpTop_mm) / Math.max(1e-6, deep - pulpTop_mm)));
		return outer(j, depth) * opening * Math.sqrt(1 - (1 - q) ** 3);
	};
	/** wall along the ray of a column, after what the successor has taken; null = nothing left */
	const wall = (
		j: number,
		depth: number,
	): { from: number; to: number; bitten: 'in' | 'out' | null } | null => {
		const [to, from] = [outer(j, depth), inner(j, depth)];
		const gone = taken?.(high - depth);
		if (!gone) return { from, to, bitten: null };
		const hit = rayThroughEllipse(angles[j], gone, leanAt(form, depth));
		if (!hit || hit.far <= from || hit.near >= to) return { from, to, bitten: null };
		if (depth < high) {
			// within the crown the inside gives way, and the crown's own surface never
			return { from: Math.max(from, Math.min(hit.far, to * (1 - CROWN_WALL))), to, bitten: 'in' };
		}
		if (hit.far >= to) {
			return hit.near - from < LEAST_WALL * to ? null : { from, to: hit.near, bitten: 'out' };
		}
		return to - hit.far < LEAST_WALL * to ? null : { from: hit.far, to, bitten: 'in' };
	};

	const ends = columnEnds(form, growth, angles, (j, depth) => wall(j, depth) === null);
	const rings: Ring[] = [];
	const ring = (below: Region, side: 'to' | 'from', bite: 'in' | 'out', depthOf: (j: number) => number) => {
		const points = new Float64Array(3 * n);
		const tags: (Region | null)[] = [];
		for (let j = 0; j < n; j++) {
			const depth = depthOf(j);
			const found = wall(j, depth) ?? wall(j, Math.max(0, depth - 0.02 * high));
			const at = found ? found[side] : side === 'to' ? outer(j, depth) : inner(j, depth);
			points[3 * j] = at * Math.cos(angles[j]);
			points[3 * j + 1] = high - depth;
			points[3 * j + 2] = leanAt(form, depth) + at * Math.sin(angles[j]);
			tags.push(found?.bitten === bite ? 'pit' : null);
		}
		rings.push({ points, below, tags });
	};

	const crown = Math.min(deep, high);
	for (let i = 1; i <= crownRows; i++) {
		const depth = crown * (0.012 + 0.988 * (i / crownRows) ** 1.25);
		// a crown still forming ends at its rim
		ring('enamel', 'to', 'out', (j) => Math.min(depth, ends[j]));
	}
	if (deep > high) {
		rings[rings.length - 1].below = 'root';
		for (let i = 1; i <= rootRows; i++) {
			const v = i / rootRows;
			ring('root', 'to', 'out', (j) => high + Math.max(1e-3, ends[j] - high) * v);
		}
	}
	rings[rings.length - 1].below = growth.bays_mm > 0 ? 'pit' : 'dentine';
	for (let i = 0; i < innerRows; i++) {
		const v = i / innerRows;
		ring('pulp', 'from', 'in', (j) => ends[j] + (pulpTop_mm - ends[j]) * Math.sin((Math.PI / 2) * v));
	}
	const tip = [0, high, leanAt(form, 0)] as const;
	const top = [0, high - pulpTop_mm, leanAt(form, pulpTop_mm)] as const;
	return skin(tip, 'enamel', rings, top);
}

/** Depth at which each column of the wall ends: above every opening eaten through it, with sloping sides. */
function columnEnds(
	form: LifeForm,
	growth: Growth,
	angles: readonly number[],
	gone: (column: number, depth: number) => boolean,
): Float64Array {
	const { crownHeight_mm: high } = form;
	const { depth_mm: deep, bays_mm } = growth;
	const n = angles.length;
	const ends = new Float64Array(n);
	const STEPS = 60;
	for (let j = 0; j < n; j++) {
		ends[j] = deep;
		if (deep > high && growth.taken) {
			for (let i = 0; i <= STEPS; i++) {
				const depth = high + ((deep - high) * i) / STEPS;
				if (!gone(j, depth)) continue;
				ends[j] = Math.max(high, depth - (deep - high) / STEPS);
				break;
			}
		}
	}
	const width = (2 * Math.PI * form.halfWidth_mm) / n;
	for (let round = 0; round < 2; round++)
		for (const step of [1, -1])
			for (let i = 0, j = step > 0 ? 0 : n - 1; i < 2 * n; i++, j = (j + step + n) % n) {
				const before = (j - step + n) % n;
				ends[j] = Math.min(ends[j], ends[before] + OPENING_SLOPE * width);
			}
	if (bays_mm > 0)
		for (let j = 0; j < n; j++) {
			// shallow bays side by side, of uneven width
			const wave = Math.abs(Math.sin(3.5 * angles[j] + 0.6 * Math.sin(2 * angles[j])));
			ends[j] = Math.max(Math.min(high, ends[j]), ends[j] - bays_mm * (1 - wave));
		}
	return ends;
}

const radius = (half: { halfLength_mm: number; halfWidth_mm: number }, angle: number): number =>
	1 / Math.max(1e-9, Math.hypot(Math.cos(angle) / half.halfLength_mm, Math.sin(angle) / half.halfWidth_mm));

/** Where a ray from (0, axis) in the x-z plane lies inside an ellipse centred at (0, z): distances, or null. */
function rayThroughEllipse(
	angle: number,
	ellipse: { z_mm: number; halfLength_mm: number; halfWidth_mm: number },
	axis_mm: number,
): { near: number; far: number } | null {
	const [dx, dz] = [Math.cos(angle) / ellipse.halfLength_mm, Math.sin(angle) / ellipse.halfWidth_mm];
	const oz = (axis_mm - ellipse.z_mm) / ellipse.halfWidth_mm;
	const a = dx * dx + dz * dz;
	const b = oz * dz;
	const c = oz * oz - 1;
	const root = b * b - a * c;
	if (root <= 0) return null;
	const near = (-b - Math.sqrt(root)) / a;
	const far = (-b + Math.sqrt(root)) / a;
	return far <= 0 ? null : { near: Math.max(0, near), far };
}
