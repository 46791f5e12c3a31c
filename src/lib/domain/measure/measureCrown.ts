import { bounds } from '../mesh/bounds';
import { fitPlane } from '../mesh/fitPlane';
import { planeFrame } from '../mesh/planeFrame';
import { heightsAlong, section, type PlaneFrame } from '../mesh/section';
import { sectionMeasure, type SectionValues } from '../mesh/sectionMeasure';
import { surfaceArea } from '../mesh/surfaceArea';
import { topology, type Topology } from '../mesh/topology';
import { regionIndex, type TriMesh } from '../mesh/triMesh';
import { volume } from '../mesh/volume';
import { weld } from '../mesh/weld';
import { fail, ok, type Result } from '../result';
import { vec3, type Vec3 } from '../vec3';
import { apexAngle, crownAngle } from './angles';
import { basePoints } from './basePoints';
import { centrelineTurning } from './centrelineTurning';
import { checkMesh } from './checkMesh';
import { wornFacets } from './wornFacets';
import type {
	CrownMarks,
	CrownMeasures,
	MeasureProblem,
	MeasureWarning,
	SectionMeasure,
} from './crownMeasures';
import { crownLines } from './crownLines';
import { findApex } from './findApex';
import { findBase } from './findBase';
import { outlineShape } from './outlineShape';
import { outlineStack } from './outlineStack';
import { polarOutline } from './polarOutline';
import { surfaceDistance } from './surfaceDistance';
import { tipPoint } from './tipPoint';
import { tipRadius } from './tipRadius';

export interface MeasureOptions {
	/** the crown's own points, for a tooth with its root */
	marks?: CrownMarks;
	/** the mesh comes from `weld` and need not be welded again */
	welded?: boolean;
}

/** What both ways of defining the crown, marked or found, agree on. */
interface Crown {
	/** origin on the base plane, u mesial to distal, normal towards the tip */
	frame: PlaneFrame;
	apex: Vec3;
	baseMesial: Vec3;
	baseDistal: Vec3;
	baseLength_mm: number;
	baseWidth_mm: number;
	axialHeight_mm: number;
}

/** heights of the sections that are reported, fractions of axial height */
const REPORTED = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9] as const;
/** heights of crowns outside which a unit is probably wrong, mm: no reptile tooth crown is known beyond them
 * (common practice, no source) */
const LIKELY_HEIGHT_MM = [0.2, 400] as const;
const FEW_TRIANGLES = 500;
/** Height of the section that gives the width of a marked base, fraction of axial height. */
const BASE_LIFT = 5e-4;
/** Tilt of triangles by noise that hides flat facets, degrees: flatPatch.ts looks within 1 degree. */
const FACET_TILT_DEG = 0.6;
/** Least axial height over base length for a centreline: sections across it leave a lower crown through its base. */
const LEAST_SLENDER = 0.9;
/** Least growth of the section's area from 0.2 % to 0.4 % below the top of a tip that is not flat. */
const FLAT_TIP = 1.25;

/**
 * Measures a crown from its mesh alone, at any position and rotation, in mm.
 *
 * Without marks the whole piece is taken for the crown: its base is the flat end it was cut or broken at, or the rim
 * of its opening; the apex is the point farthest above it; the base's longer diameter is its length; distal is
 * the side to which the apex leans. With marks the base plane goes through the two base points, along the marked
 * labial direction or, without one, square to the direction of the apex, and only what lies above it is the crown;
 * surface and volume stay those of the whole mesh.
 *
 * What cannot be told is null, with a warning. Problems: see MeasureProblem.
 */
export function measureCrown(
	mesh: TriMesh,
	options: MeasureOptions = {},
): Result<CrownMeasures, MeasureProblem> {
	const broken = checkMesh(mesh);
	if (broken) return fail(broken);
	const welded = options.welded ? mesh : weld(mesh);
	const area = surfaceArea(welded);
	if (!(area > 1e-12 * bounds(welded).diagonal ** 2) || welded.indices.length === 0) {
		return fail({ code: 'no-area', message: 'All triangles fall together: the surface has no area.' });
	}
	const warnings: MeasureWarning[] = [];
	const warn = (code: string, message: string): void => void warnings.push({ code, message });
	const shape = topology(welded);
	const crown = options.marks ? markedCrown(welded, options.marks, warn) : foundCrown(welded, shape, warn);
	if (!crown.ok) return crown;
	const { frame, apex, baseMesial, baseDistal, baseLength_mm: cbl, axialHeight_mm: height } = crown.value;

	if (shape.components > 1)
		warn('several-pieces', `The mesh has ${shape.components} separate pieces; all were measured together.`);
	if (welded.indices.length / 3 < FEW_TRIANGLES) {
		warn(
			'coarse-mesh',
			`The mesh has only ${welded.indices.length / 3} triangles; lengths and areas are rough.`,
		);
	}
	if (height < LIKELY_HEIGHT_MM[0] || height > LIKELY_HEIGHT_MM[1]) {
		warn(
			'unlikely-size',
			`A crown ${height.toPrecision(3)} mm high is unlikely: check the unit of the file.`,
		);
	}

	const heights = heightsAlong(welded, frame);
	const labial = options.marks?.labial;
	const labialSide = labial && vec3.dot(labial, frame.v) > 0 ? 1 : -1;
	const facets = wornFacets(welded, shape, frame, height, heights, labialSide);
	const lines = crownLines(outlineStack(welded, frame, height, heights), {
		frame,
		labialSide,
		height,
		facets,
	});
	warnings.push(...lines.warnings);
	if (facets.length === 0 && lines.tilt_deg > FACET_TILT_DEG)
		warn('facets-under-noise', 'The surface is too rough for flat worn facets to show: none are told.');
	const cut = (at: number): SectionValues | null =>
		sectionMeasure(section(welded, frame, at * height, heights));
	const sections: SectionMeasure[] = [];
	let missed = 0;
	let open = 0;
	for (const at of REPORTED) {
		const loops = section(welded, frame, at * height, heights);
		const values = sectionMeasure(loops);
		if (!values) {
			missed++;
			continue;
		}
		if (!values.closed) open++;
		const outline = polarOutline(loops[0].points);
		sections.push({
			at,
			area_mm2: values.area,
			perimeter_mm: values.perimeter,
			length_mm: values.length,
			width_mm: values.width,
			circularity: (4 * Math.PI * values.area) / values.perimeter ** 2,
			shape: outline ? outlineShape(outline) : null,
		});
	}
	if (missed > 0)
		warn('section-missing', `${missed} of ${REPORTED.length} sections gave no outline and are left out.`);
	if (open > 0)
		warn(
			'section-open',
			`${open} sections cross a hole in the mesh; their outlines were closed by a straight line.`,
		);
	const mid = sections.find((s) => s.at === 0.5);
	if (!mid) warn('no-mid-crown', 'No section at half height: mid-crown length and width are left out.');

	const ch = vec3.distance(apex, baseDistal);
	const al = vec3.distance(apex, baseMesial);
	const tip = roundTip(welded, frame, apex, Math.min(height * 0.5, cbl), cut, warn);
	const tall = height >= LEAST_SLENDER * cbl;
	const curvature = tall ? centrelineTurning(welded, frame, apex, heights) : null;
	if (!tall) warn('too-low-for-curvature', 'The crown is too low for its length to tell a centreline.');
	else if (curvature === 'few-sections')
		warn('no-centreline', 'Too few sections for a centreline: its curvature is left out.');
	else if (curvature === 'no-line')
		warn(
			'no-centreline',
			'The middles of the sections make no smooth line from base to apex: its curvature is left out.',
		);
	return ok({
		triangles: welded.indices.length / 3,
		vertices: welded.positions.length / 3,
		components: shape.components,
		watertight: shape.watertight,
		surfaceArea_mm2: area,
		volume_mm3: enclosedVolume(welded, shape, warn),
		apex,
		baseMesial,
		baseDistal,
		axialHeight_mm: height,
		crownHeight_mm: ch,
		apicalLength_mm: al,
		crownBaseLength_mm: cbl,
		crownBaseWidth_mm: crown.value.baseWidth_mm,
		crownBaseRatio: crown.value.baseWidth_mm / cbl,
		crownHeightRatio: ch / cbl,
		midCrownLength_mm: mid ? mid.length_mm : null,
		midCrownWidth_mm: mid ? mid.width_mm : null,
		crownAngle_deg: crownAngle(cbl, al, ch),
		apexAngle_deg: apexAngle(cbl, al, ch),
		tipRadius_mm: tip,
		curvature_deg: typeof curvature === 'number' ? curvature : null,
		ridgeCount: lines.ridgeCount,
		ridges: lines.ridges,
		carinaCount: lines.carinaCount,
		carinae: lines.carinae,
		facets: facets.map(({ area_mm2, normal, where }) => ({ area_mm2, normal, where })),
		sections,
		warnings,
	});
}

type Warn = (code: string, message: string) => void;
/** section at a fraction of axial height */
type Cut = (at: number) => SectionValues | null;

function markedCrown(mesh: TriMesh, marks: CrownMarks, warn: Warn): Result<Crown, MeasureProblem> {
	const { apex, baseMesial, baseDistal } = marks;
	const span = vec3.subtract(baseDistal, baseMesial);
	const baseLength = vec3.norm(span);
	const middle = vec3.lerp(baseMesial, baseDistal, 0.5);
	if (!(baseLength > 0)) {
		return fail({ code: 'no-base', message: 'The marked mesial and distal base points are the same point.' });
	}
	const u = vec3.scale(span, 1 / baseLength);
	const toApex = vec3.subtract(apex, middle);
	// the base plane holds the line between the base points; where labial is marked it holds that direction too,
	// else it is square to the direction of the apex
	const upright = vec3.subtract(toApex, vec3.scale(u, vec3.dot(toApex, u)));
	const across = marks.labial ? vec3.cross(u, marks.labial) : upright;
	const sideways = marks.labial && vec3.norm(across) > 1e-3 * vec3.norm(marks.labial);
	const axis = sideways ? across : upright;
	const length = vec3.norm(axis);
	const rise = length > 0 ? vec3.scale(axis, vec3.dot(toApex, axis) / length ** 2) : upright;
	const height = vec3.norm(rise);
	if (!(height > 1e-6 * baseLength)) {
		return fail({ code: 'no-height', message: 'The marked apex lies on the line between the base points.' });
	}
	const frame = planeFrame(middle, rise, u);
	const tolerance = bounds(mesh).diagonal * 0.02;
	for (const [name, point] of Object.entries({ apex, baseMesial, baseDistal })) {
		const gap = surfaceDistance(mesh, point);
		if (gap > tolerance) {
			warn(
				'mark-off-surface',
				`The mark ${name} lies ${gap.toPrecision(2)} mm from the nearest point of the mesh.`,
			);
		}
	}
	// a hair above the plane: exactly in the flat end of a piece a section is any part of its outline
	const [base] = [BASE_LIFT, 0, 10 * BASE_LIFT].flatMap(
		(lift) => sectionMeasure(section(mesh, frame, height * lift)) ?? [],
	);
	if (!base) {
		return fail({
			code: 'no-base',
			message: 'The plane through the marked base points does not cut the mesh.',
		});
	}
	return ok({
		frame,
		apex,
		baseMesial,
		baseDistal,
		baseLength_mm: baseLength,
		baseWidth_mm: base.width,
		axialHeight_mm: height,
	});
}

function foundCrown(mesh: TriMesh, shape: Topology, warn: Warn): Result<Crown, MeasureProblem> {
	const found = findBase(mesh, shape);
	if (!found) return fail({ code: 'no-base', message: 'The surface has no extent that could be a crown.' });
	const heights = heightsAlong(mesh, found.frame);
	const apex = findApex(mesh, found.frame, heights);
	const height = apex.height;
	const size = bounds(mesh).diagonal;
	if (!(height > 1e-4 * size)) {
		return fail({ code: 'no-height', message: 'The surface is flat: there is no apex above its base.' });
	}
	const hasRoot = mesh.regions?.includes(regionIndex('root')) ?? false;
	if (found.kind === 'end' || hasRoot) {
		warn(
			'crown-base-not-marked',
			'The base of the crown is neither a flat end of the piece nor marked: the whole piece was measured.',
		);
	}
	if (found.kind === 'broken') {
		warn('base-rough', 'The base of the piece is a rough break: the mean plane through it was taken.');
	}
	let outline = found.outline;
	let widest = 0;
	if (!outline) {
		// no flat end: the widest section stands for the base
		for (const at of REPORTED) {
			const loop = section(mesh, found.frame, at * height, heights)[0];
			if (loop && loop.area > widest) {
				widest = loop.area;
				outline = loop.points;
			}
		}
	}
	if (!outline) return fail({ code: 'no-base', message: 'No section through the piece gives an outline.' });
	const base = basePoints(outline, apex.uv, warn);
	if (!(base.length > 0) || !(base.width > 0)) {
		return fail({ code: 'no-base', message: 'The base of the piece has no width.' });
	}
	const { frame } = found;
	const place = ([x, y]: readonly [number, number]): Vec3 =>
		vec3.add(frame.origin, vec3.add(vec3.scale(frame.u, x), vec3.scale(frame.v, y)));
	const along = vec3.add(vec3.scale(frame.u, base.direction[0]), vec3.scale(frame.v, base.direction[1]));
	return ok({
		frame: planeFrame(place(base.centre), frame.normal, along),
		apex: apex.point,
		baseMesial: place(base.mesial),
		baseDistal: place(base.distal),
		baseLength_mm: base.length,
		baseWidth_mm: base.width,
		axialHeight_mm: height,
	});
}

function roundTip(
	mesh: TriMesh,
	frame: PlaneFrame,
	apex: Vec3,
	largest_mm: number,
	cut: Cut,
	warn: Warn,
): number | null {
	// two slices just below the top: their areas are as 1 to 2 in a sphere, 1 to 4 in a cone, alike under a flat
	const upper = cut(0.998);
	const lower = cut(0.996);
	if (upper && lower && lower.area < upper.area * FLAT_TIP) {
		warn('tip-flat', 'The tip is flat: it has no radius.');
		return null;
	}
	const radius = tipRadius(mesh, tipPoint(mesh, frame, apex, largest_mm, cut(0.8)), largest_mm);
	if (radius === null) {
		warn('tip-not-resolved', 'The tip is not round, or sharper than the mesh resolves: no tip radius.');
	}
	return radius;
}

function enclosedVolume(mesh: TriMesh, shape: Topology, warn: Warn): number | null {
	if (!shape.oriented) {
		warn('mixed-winding', 'Neighbouring triangles face opposite ways: the volume is left out.');
		return null;
	}
	if (shape.watertight) return Math.abs(volume(mesh));
	const [loop] = shape.boundaryLoops;
	if (loop && shape.boundaryLoops.length === 1) {
		const points = new Float64Array(loop.length * 3);
		loop.forEach((vertex, i) => points.set(mesh.positions.subarray(vertex * 3, vertex * 3 + 3), i * 3));
		const lid = fitPlane(points);
		if (lid.rms < bounds(mesh).diagonal * 0.03) {
			warn('base-capped', 'The mesh is open at one end; the volume is that with a flat lid.');
			return Math.abs(volume(mesh, lid.point));
		}
	}
	warn('open-mesh', `The mesh has ${shape.boundaryLoops.length} openings: the volume is left out.`);
	return null;
}
