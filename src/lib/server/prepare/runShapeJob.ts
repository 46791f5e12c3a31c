import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { PreparedShape } from '../../content/exhibit';
import { toTooth, type FileFrame } from '../../content/fileFrame';
import { regionAreas } from '../../domain/compare/regionAreas';
import { measureCrown } from '../../domain/measure/measureCrown';
import type { CrownMeasures } from '../../domain/measure/crownMeasures';
import { bounds } from '../../domain/mesh/bounds';
import { lineDrawing } from '../../domain/mesh/lineDrawing';
import { orient } from '../../domain/mesh/orient';
import type { TriMesh } from '../../domain/mesh/triMesh';
import { weld } from '../../domain/mesh/weld';
import { fail, ok, type Result } from '../../domain/result';
import { sculpt } from '../../domain/tooth/sculpt';
import { vec3 } from '../../domain/vec3';
import { readPicture } from '../scan/readPicture';
import { readScan } from '../scan/readScan';
import { shapeFiles } from '../shapeFiles';
import { writeAtomically } from '../writeAtomically';
import { closeSmallHoles } from './closeSmallHoles';
import { measureScan } from './measureScan';
import { paintedSurface, type PaintedSurface } from './paintedSurface';
import { paintPicture, pictureFrame } from './paintPicture';
import { prepareLevels } from './prepareLevels';
import { needsMarks, provisionalShape } from './provisionalShape';
import { readGlb } from './readGlb';
import { rootBelowBase } from './rootBelowBase';
import type { ReportStage, ShapeFailure, ShapeJob, ShapeOutcome } from './shapeJob';
import type { ShapeLevel } from './shapeLevel';
import { turnToToothFrame } from './turnToToothFrame';
import { writeGlb } from './writeGlb';

/** Triangles. */
const DRAW_THINNED_ABOVE = 150_000;

/**
 * Works one shape out and leaves its files in the data folder, the facts last: sculpt or read, weld,
 * measure, turn into the tooth frame, bring to two levels, bake the light, write the GLB, paint the
 * pictures, make the line drawing. A shape that lacks pictures only has just those painted.
 */
export async function runShapeJob(
	job: ShapeJob,
	report: ReportStage = () => undefined,
): Promise<ShapeOutcome> {
	const files = shapeFiles(job.dataDir, job.hash);
	const known = await readKnown(files.facts, files.glb, job.hash);
	if (known) {
		for (const preservation of job.preservations) {
			await writeAtomically(files.picture(preservation), await paintPicture(known.level, preservation));
		}
		return { ok: true, prepared: known.prepared };
	}

	report('reading');
	const tooth = await measuredTooth(job, report);
	if (!tooth.ok) return { ok: false, failure: tooth.problem };
	const { mesh, measures, frame, labial, marked, painted } = tooth.value;
	report('simplifying');
	const torn = frame && !measures.watertight;
	const shown = painted?.mesh ?? mesh;
	const whole = torn ? closeSmallHoles(shown) : shown;
	const levels = await prepareLevels(whole, () => report('baking'), painted?.colours);
	const [full, light] = marked ? levels.map(rootBelowBase) : levels;
	report('writing');
	const box = bounds(full);
	const areas = regionAreas(mesh);
	const prepared: PreparedShape = {
		hash: job.hash,
		triangles: full.indices.length / 3,
		measures,
		bounds: { min: [...box.min], max: [...box.max] },
		picture: pictureFrame(full),
		...(areas ? { regionAreas_mm2: areas } : {}),
		...(frame ? { fileFrame: frame } : {}),
		...(labial ? { labial } : {}),
	};
	await writeAtomically(files.glb, await writeGlb([full, light]));
	for (const preservation of job.preservations) {
		await writeAtomically(files.picture(preservation), await paintPicture(full, preservation));
	}
	// the finest scans are drawn from their thinned surface, since no pen shows the difference; marked ones too, since
	// that surface knows where their root begins
	const fromLevel = marked || mesh.indices.length / 3 > DRAW_THINNED_ABOVE;
	const drawn = fromLevel ? weldedSurface(full) : torn ? closeSmallHoles(mesh) : mesh;
	const drawing = lineDrawing(drawn, { axialHeight_mm: measures.axialHeight_mm, labial: prepared.labial });
	await writeAtomically(files.drawing, JSON.stringify(drawing));
	await writeAtomically(files.facts, JSON.stringify(prepared));
	return { ok: true, prepared };
}

/** A level with one vertex at each place and a region per triangle. */
function weldedSurface({ positions, indices, regions }: ShapeLevel): TriMesh {
	const perTriangle = Uint8Array.from({ length: indices.length / 3 }, (_, t) => regions[indices[t * 3]]);
	return weld({ positions, indices, regions: perTriangle });
}

async function readKnown(
	facts: string,
	glb: string,
	hash: string,
): Promise<{ prepared: PreparedShape; level: ShapeLevel } | null> {
	try {
		const prepared = JSON.parse(await readFile(facts, 'utf8')) as PreparedShape;
		return prepared.hash === hash ? { prepared, level: await readGlb(await readFile(glb), 0) } : null;
	} catch {
		return null; // not prepared yet, or damaged: do it all
	}
}

interface MeasuredTooth {
	mesh: TriMesh;
	measures: CrownMeasures;
	/** of a scan only */
	frame?: FileFrame;
	labial?: '+z' | '-z';
	/** whether the crown of a scan is marked, so that what lies below its base is known for root */
	marked?: boolean;
	/** the surface of a scan with colours of its own; it may be finer than the one measured */
	painted?: PaintedSurface;
}

async function measuredTooth(
	job: ShapeJob,
	report: ReportStage,
): Promise<Result<MeasuredTooth, ShapeFailure>> {
	const { source } = job;
	if (source.kind === 'model') {
		const sculpted = sculpt(source.form);
		if (!sculpted.ok) return fail({ of: 'form', problem: sculpted.problem });
		const { mesh, marks } = sculpted.value;
		report('measuring');
		const measured = measureCrown(mesh, { marks });
		if (!measured.ok) return fail({ of: 'measure', problem: measured.problem });
		return ok({ mesh, measures: measured.value });
	}
	const bytes = await readFile(source.path).catch(() => null);
	if (!bytes || createHash('sha256').update(bytes).digest('hex') !== source.bytesHash) {
		return fail({ of: 'changed' });
	}
	const scan = await readScan(bytes, basename(source.path), source.units, {
		recentre: true,
		...(source.plain ? {} : { openPicture: readPicture }),
	});
	if (!scan.ok) return fail({ of: 'scan', problem: scan.problem });
	report('measuring');
	const measured = measureScan(scan.value, source.crown);
	if (!measured.ok) {
		const { problem } = measured;
		if (!needsMarks(problem)) return fail({ of: 'measure', problem });
		const provisional = await provisionalShape(job, scan.value, source.plain ?? false, problem, report);
		return fail({ of: 'measure', problem, provisional });
	}
	const { mesh, measures, marks } = measured.value;
	const turned = turnToToothFrame(mesh, measures, marks);
	// the frame of the file itself, not of the mesh that may have been moved nearer to its origin
	const moved = scan.value.origin_mm;
	const offset = vec3.subtract(turned.frame.offset, toTooth({ ...turned.frame, offset: [0, 0, 0] }, moved));
	const found = source.plain ? null : paintedSurface(scan.value);
	const { rows } = turned.frame;
	const painted = found && { ...found, mesh: orient(found.mesh, rows, turned.frame.offset) };
	return ok({
		...turned,
		frame: { ...turned.frame, offset },
		marked: marks !== undefined,
		...(painted ? { painted } : {}),
	});
}
