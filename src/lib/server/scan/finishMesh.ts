import type { TriMesh } from '../../domain/mesh/triMesh';
import type { Vec3 } from '../../domain/vec3';
import { noSuchCorner, tooManyTriangles } from './faceList';
import { isLoose } from './isLoose';
import { LIMITS } from './limits';
import type { RawMesh, ScanWarning } from './rawMesh';
import { ScanFault } from './scanProblem';
import { turnOutward } from './turnOutward';

/** Sizes outside which no tooth is known, mm (common practice, no source): the unit is probably wrong. */
const LIKELY_SIZE_MM = [0.5, 400] as const;
/** A mesh farther from the origin than this many times its size is moved there, where single precision is finer. */
const FAR = 100;
/** Farther than this, single-precision numbers have lost what a thousandth of the mesh's size is. */
const TOO_FAR = 10_000;
/** Share of points without a triangle from which on a part of the surface may be missing. */
const UNUSED_SHARE = 0.01;

export interface FinishedMesh {
	mesh: TriMesh;
	/** what has to be added to the mesh's positions to come back to the file's own frame, mm; mostly 0, 0, 0 */
	origin_mm: Vec3;
	warnings: ScanWarning[];
}

/**
 * Checks what a reader found and turns it into a mesh in millimetres: points that exist and are numbers, a surface with
 * an area, facing outwards. Throws ScanFault.
 */
export function finishMesh(raw: RawMesh, mmPerUnit: number, recentre: boolean): FinishedMesh {
	const source = raw.positions;
	const vertices = Math.floor(source.length / 3);
	const indices = raw.indices ?? Uint32Array.from({ length: vertices - (vertices % 3) }, (_, i) => i);
	if (indices.length < 3) {
		throw new ScanFault('no-triangles', 'It has no triangles: only points or lines, or nothing at all.');
	}
	if (indices.length > LIMITS.triangles * 3) throw tooManyTriangles();
	const warnings: ScanWarning[] = [...(raw.warnings ?? [])];
	const used = new Uint8Array(vertices);
	for (let k = 0; k < indices.length; k++) {
		if (indices[k] >= vertices) throw noSuchCorner(indices[k], vertices);
		used[indices[k]] = 1;
	}
	const box = boxOf(source, used);
	const size = Math.hypot(...box.high.map((high, axis) => high - box.low[axis])) * mmPerUnit;
	const middle = box.high.map((high, axis) => ((high + box.low[axis]) / 2) * mmPerUnit);
	const distance = Math.hypot(...middle);
	const exact = source instanceof Float64Array;
	const origin: Vec3 =
		recentre && exact && distance > FAR * size
			? [Math.round(middle[0]), Math.round(middle[1]), Math.round(middle[2])]
			: [0, 0, 0];
	const positions = new Float32Array(vertices * 3);
	let unused = 0;
	let bad = 0;
	for (let i = 0; i < vertices; i++) {
		let from = i * 3;
		if (!used[i]) {
			unused++;
			if (!Number.isFinite(source[from] + source[from + 1] + source[from + 2])) {
				// no triangle needs this point: any sound place will do
				bad++;
				from = indices[0] * 3;
			}
		}
		for (let axis = 0; axis < 3; axis++) {
			positions[i * 3 + axis] = source[from + axis] * mmPerUnit - origin[axis];
		}
	}
	const mesh: TriMesh = { positions, indices };
	checkArea(mesh, size);
	if (isLoose(mesh, size)) {
		throw new ScanFault(
			'loose-triangles',
			'Its triangles are not joined to one another: they make no surface that could be measured.',
		);
	}

	if (bad > 0) {
		warnings.push({
			code: 'bad-points',
			message: `${bad} points without a place were left out; no triangle uses them.`,
		});
	}
	if (unused > UNUSED_SHARE * vertices) {
		warnings.push({
			code: 'unused-points',
			message: `${unused} of ${vertices} points belong to no triangle: a part of the surface may be missing.`,
		});
	}
	if (!(recentre && exact) && distance > TOO_FAR * size) {
		warnings.push({
			code: 'far-from-origin',
			message: 'The surface lies so far from the origin of its file that its numbers lose their fine digits.',
		});
	}
	const tall = Math.max(...box.high.map((high, axis) => high - box.low[axis])) * mmPerUnit;
	if (tall < LIKELY_SIZE_MM[0] || tall > LIKELY_SIZE_MM[1]) {
		warnings.push({
			code: 'unlikely-size',
			message: `It measures ${tall.toPrecision(3)} mm at its longest, which is unlikely for a tooth: check the unit of the file.`,
		});
	}
	if (turnOutward(mesh)) {
		warnings.push({
			code: 'inside-out',
			message: 'All its triangles faced inwards; they were turned round.',
		});
	}
	return { mesh, origin_mm: origin, warnings };
}

/** Bounds of the points that triangles use; throws for one that has no place. */
function boxOf(p: ArrayLike<number>, used: Uint8Array): { low: number[]; high: number[] } {
	const low = [Infinity, Infinity, Infinity];
	const high = [-Infinity, -Infinity, -Infinity];
	for (let i = 0; i < used.length; i++) {
		if (!used[i]) continue;
		for (let axis = 0; axis < 3; axis++) {
			const value = p[i * 3 + axis];
			// beyond this a single overflows once it is turned into another unit and multiplied
			if (!(Math.abs(value) < 1e15)) {
				throw new ScanFault(
					'not-a-number',
					Number.isFinite(value)
						? `Point number ${i + 1} lies at ${value.toPrecision(3)}, which is no sensible place.`
						: `Point number ${i + 1} has no place: one of its numbers is not a number.`,
				);
			}
			if (value < low[axis]) low[axis] = value;
			if (value > high[axis]) high[axis] = value;
		}
	}
	return { low, high };
}

function checkArea({ positions: p, indices }: TriMesh, size: number): void {
	const least = 1e-12 * size * size;
	let area = 0;
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
		area += Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
		if (area > least && area > 0) return;
	}
	throw new ScanFault(
		'no-area',
		'Its triangles have no area: their points fall together or lie on one line.',
	);
}
