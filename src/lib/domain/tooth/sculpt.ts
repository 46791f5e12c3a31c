import { clipHalfSpace } from '../mesh/clipHalfSpace';
import type { Region, TriMesh } from '../mesh/triMesh';
import { fail, ok, type Result } from '../result';
import type { Vec3 } from '../vec3';
import { checkForm } from './checkForm';
import { columnAngles } from './columns';
import { crownRows, denticleCount, ROWS_PER_DENTICLE } from './crownRows';
import { crownShape, type CrownShape } from './crownShape';
import { facetPlane } from './facetPlane';
import type { FormProblem, ToothForm } from './form';
import { FORM_LIMITS } from './formRanges';
import { isClosed } from './isClosed';
import { lowerRings } from './lowerRings';
import { relief, type Relief } from './relief';
import { rootWall } from './rootWall';
import { skin, type Ring } from './skin';

/** Points that define the crown, on its surface, in the tooth frame, mm. */
export interface SculptedMarks {
	/** the crown's highest point; the middle of the flat where the tip is worn */
	apex: Vec3;
	/** the base section's ends, carinae left out */
	baseMesial: Vec3;
	baseDistal: Vec3;
	/** unit vector towards the lip */
	labial: Vec3;
}

export interface SculptedTooth {
	mesh: TriMesh;
	marks: SculptedMarks;
}

export interface SculptOptions {
	/** full: 10,000 to 24,000 triangles, more for serrations; draft: about 3,000, edges without serrations */
	detail?: 'full' | 'draft';
}

/** How finely each detail samples; counts of columns and rows. */
const PLANS = {
	full: { plain: 76, perEdge: 12, perRidge: 6, along: 54, cavityRings: 20 },
	draft: { plain: 28, perEdge: 4, perRidge: 3, along: 16, cavityRings: 6 },
} as const;
/** Columns of a serrated tooth: rows cost most there. */
const SERRATED = { plain: 60, perEdge: 13, perRidge: 4 } as const;
/** Most quadrilaterals of a serrated tooth, and the rows that its smooth parts take of them. */
const SERRATED_QUADS = 47_500;
const SMOOTH_ROWS = 90;
/** A crown with more columns than this gets fewer rows. */
const MANY_COLUMNS = 110;

/**
 * Makes the surface of a tooth from its form: one closed, outward-facing mesh in the tooth frame (mm), a region per
 * triangle, and the points that define the crown. The same form always gives the same mesh.
 */
export function sculpt(form: ToothForm, options: SculptOptions = {}): Result<SculptedTooth, FormProblem> {
	const problem = checkForm(form);
	if (problem) return fail(problem);
	const detail = options.detail ?? 'full';
	const plan = PLANS[detail];
	const serrated = detail === 'full' && form.carinae.some((carina) => (carina.serrationsPer5mm ?? 0) > 0);

	const columns = columnAngles(form, serrated ? { ...plan, ...SERRATED } : plan);
	const shape = crownShape(form, columns, (trial) => {
		const smooth = relief(form, trial, []);
		return (column, u) => smooth.at(column, u).height_mm;
	});
	const serratedRows = serrated ? Math.floor(SERRATED_QUADS / columns.length) - SMOOTH_ROWS : 0;
	const tooFine = serrated ? tooFineFor(form, serratedRows) : null;
	if (tooFine) return fail(tooFine);
	const along = plan.along * Math.min(1, Math.max(0.7, Math.sqrt(MANY_COLUMNS / columns.length)));
	const rows = crownRows(form, shape, { along, serratedRows });
	const surface = relief(form, shape, rows.serrations);
	const crown = rows.depths_mm.map((u) => crownRing(shape, surface, u));
	const base = columns.map((_, j) => shape.sectionPoint(j, shape.length_mm));
	const wall = rootWall(form, base);
	crown[crown.length - 1].below = wall ? 'root' : 'dentine';
	const spacing_mm = form.crownHeight_mm / (along * 0.72);
	const lower = lowerRings(form, shape, wall, {
		spacing_mm,
		cavityRings: plan.cavityRings,
		coarse: detail === 'draft',
	});
	const whole = skin(shape.line.at(shape.length_mm).centre, 'enamel', [...crown, ...lower.rings], lower.pole);

	const worn = wear(form, shape, whole);
	if (!worn.ok) return worn;
	const mesh = worn.value;
	if (!isClosed(mesh)) return fail({ code: 'not-closed', path: '' });
	return ok({
		mesh,
		marks: {
			apex: apexOf(mesh, form.crownHeight_mm),
			...baseEnds(crown[crown.length - 1]),
			labial: [0, 0, 1],
		},
	});
}

/** The first serrated edge with more denticles than the rows can carry (ridges take columns, which leaves fewer rows). */
function tooFineFor(form: ToothForm, rows: number): FormProblem | null {
	for (const [i, { from, serrationsPer5mm: found = 0 }] of form.carinae.entries()) {
		const needed = denticleCount(form, from, found) * ROWS_PER_DENTICLE.min;
		if (needed > rows)
			return {
				code: 'serration-too-fine',
				path: `carinae[${i}].serrationsPer5mm`,
				found,
				max: (found * rows) / needed,
			};
	}
	return null;
}

function crownRing(shape: CrownShape, surface: Relief, u: number): Ring {
	const { centre, distal, labial } = shape.line.at(shape.length_mm - u);
	const n = shape.columns.length;
	const points = new Float64Array(3 * n);
	const tags: (Region | null)[] = [];
	for (let j = 0; j < n; j++) {
		const [x, z] = shape.sectionPoint(j, u);
		const { height_mm, feature } = surface.at(j, u);
		const grown = 1 + height_mm / Math.max(1e-9, Math.hypot(x, z));
		for (let k = 0; k < 3; k++) points[3 * j + k] = centre[k] + (x * distal[k] + z * labial[k]) * grown;
		tags.push(feature);
	}
	return { points, below: 'enamel', tags };
}

/** Cuts the worn tip and the facets as true planes. */
function wear(form: ToothForm, shape: CrownShape, whole: TriMesh): Result<TriMesh, FormProblem> {
	let mesh = whole;
	const to_mm = form.wear?.tipWornTo_mm;
	if (to_mm !== undefined) {
		const cut = clipHalfSpace(mesh, { normal: [0, 1, 0], offset_mm: to_mm }, 'facet');
		if (!cut) return fail({ code: 'no-crown-left', path: 'wear.tipWornTo_mm', found: to_mm });
		mesh = cut;
	}
	for (const [i, facet] of (form.wear?.facets ?? []).entries()) {
		const path = `wear.facets[${i}]`;
		const plane = facetPlane(facet, form, shape, whole);
		if (plane.least_deg > facet.angle_deg)
			return fail({
				code: 'out-of-range',
				path: `${path}.angle_deg`,
				found: facet.angle_deg,
				min: plane.least_deg,
				max: 85,
			});
		const cut = clipHalfSpace(mesh, plane.half, 'facet');
		const least_mm = FORM_LIMITS.crownLeft * form.crownHeight_mm;
		const left_mm = cut ? highest(cut) : 0;
		if (!cut || left_mm < least_mm)
			return fail({ code: 'no-crown-left', path: `${path}.depth_mm`, found: left_mm, min: least_mm });
		mesh = cut;
	}
	return ok(mesh);
}

function highest(mesh: TriMesh): number {
	let top = -Infinity;
	for (let i = 1; i < mesh.positions.length; i += 3) top = Math.max(top, mesh.positions[i]);
	return top;
}

/** The highest point, or the middle of the highest flat. */
function apexOf(mesh: TriMesh, height_mm: number): Vec3 {
	const top = highest(mesh);
	const sum = [0, 0, 0];
	let count = 0;
	for (let i = 0; i < mesh.positions.length; i += 3) {
		if (mesh.positions[i + 1] < top - 1e-5 * height_mm) continue;
		for (let k = 0; k < 3; k++) sum[k] += mesh.positions[i + k];
		count++;
	}
	return [sum[0] / count, top, sum[2] / count];
}

/** Mesial and distal extremes of the base ring. */
function baseEnds({ points }: Ring): { baseMesial: Vec3; baseDistal: Vec3 } {
	let [mesial, distal] = [0, 0];
	for (let i = 0; i < points.length; i += 3) {
		if (points[i] < points[mesial]) mesial = i;
		if (points[i] > points[distal]) distal = i;
	}
	const at = (i: number): Vec3 => [points[i], points[i + 1], points[i + 2]];
	return { baseMesial: at(mesial), baseDistal: at(distal) };
}
