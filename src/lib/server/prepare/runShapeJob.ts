import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { PreparedShape } from '../../content/exhibit';
import { regionAreas } from '../../domain/compare/regionAreas';
import { measureCrown } from '../../domain/measure/measureCrown';
import type { CrownMeasures } from '../../domain/measure/crownMeasures';
import { bounds } from '../../domain/mesh/bounds';
import { lineDrawing } from '../../domain/mesh/lineDrawing';
import type { TriMesh } from '../../domain/mesh/triMesh';
import { weld } from '../../domain/mesh/weld';
import { fail, ok, type Result } from '../../domain/result';
import { sculpt } from '../../domain/tooth/sculpt';
import { readScan } from '../scan/readScan';
import { shapeFiles } from '../shapeFiles';
import { writeAtomically } from '../writeAtomically';
import { paintPicture, pictureFrame } from './paintPicture';
import { prepareLevels } from './prepareLevels';
import { readGlb } from './readGlb';
import type { ShapeFailure, ShapeJob, ShapeOutcome, ShapeSource } from './shapeJob';
import type { ShapeLevel } from './shapeLevel';
import { turnToToothFrame } from './turnToToothFrame';
import { writeGlb } from './writeGlb';

/**
 * Works one shape out and leaves its files in the data folder, the facts last: sculpt or read, weld,
 * measure, turn into the tooth frame, bring to two levels, bake the light, write the GLB, paint the
 * pictures, make the line drawing. A shape that lacks pictures only has just those painted.
 */
export async function runShapeJob(job: ShapeJob): Promise<ShapeOutcome> {
	const files = shapeFiles(job.dataDir, job.hash);
	const known = await readKnown(files.facts, files.glb, job.hash);
	if (known) {
		for (const preservation of job.preservations) {
			await writeAtomically(files.picture(preservation), await paintPicture(known.level, preservation));
		}
		return { ok: true, prepared: known.prepared };
	}

	const tooth = await measuredTooth(job.source);
	if (!tooth.ok) return { ok: false, failure: tooth.problem };
	const { mesh, measures } = tooth.value;
	const [full, light] = await prepareLevels(mesh);
	const box = bounds(full);
	const areas = regionAreas(mesh);
	const prepared: PreparedShape = {
		hash: job.hash,
		triangles: full.indices.length / 3,
		measures,
		bounds: { min: [...box.min], max: [...box.max] },
		picture: pictureFrame(full),
		...(areas ? { regionAreas_mm2: areas } : {}),
	};
	await writeAtomically(files.glb, await writeGlb([full, light]));
	for (const preservation of job.preservations) {
		await writeAtomically(files.picture(preservation), await paintPicture(full, preservation));
	}
	// the finest scans are drawn from their thinned surface: no pen shows the difference
	const { axialHeight_mm } = measures;
	const drawing = lineDrawing(mesh.regions ? mesh : weld(full), { axialHeight_mm, labial: prepared.labial });
	await writeAtomically(files.drawing, JSON.stringify(drawing));
	await writeAtomically(files.facts, JSON.stringify(prepared));
	return { ok: true, prepared };
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

async function measuredTooth(
	source: ShapeSource,
): Promise<Result<{ mesh: TriMesh; measures: CrownMeasures }, ShapeFailure>> {
	if (source.kind === 'model') {
		const sculpted = sculpt(source.form);
		if (!sculpted.ok) return fail({ of: 'form', problem: sculpted.problem });
		const { mesh, marks } = sculpted.value;
		const measured = measureCrown(mesh, { marks });
		if (!measured.ok) return fail({ of: 'measure', problem: measured.problem });
		return ok({ mesh, measures: measured.value });
	}
	const bytes = await readFile(source.path).catch(() => null);
	if (!bytes || createHash('sha256').update(bytes).digest('hex') !== source.bytesHash) {
		return fail({ of: 'changed' });
	}
	const scan = await readScan(bytes, basename(source.path), source.units);
	if (!scan.ok) return fail({ of: 'scan', problem: scan.problem });
	const mesh = weld(scan.value.mesh);
	const measured = measureCrown(mesh);
	if (!measured.ok) return fail({ of: 'measure', problem: measured.problem });
	return ok(turnToToothFrame(mesh, measured.value));
}
