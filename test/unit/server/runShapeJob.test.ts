import { validateBytes } from 'gltf-validator';
import { createHash } from 'node:crypto';
import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it, onTestFinished } from 'vitest';
import { PRESERVATIONS, type PreparedShape } from '../../../src/lib/content/exhibit';
import { toFile, toTooth } from '../../../src/lib/content/fileFrame';
import { REGIONS, type TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import type { Vec3 } from '../../../src/lib/domain/vec3';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import type { ToothForm } from '../../../src/lib/domain/tooth/form';
import { PICTURE_PX } from '../../../src/lib/server/prepare/paintPicture';
import { readGlb } from '../../../src/lib/server/prepare/readGlb';
import { runShapeJob } from '../../../src/lib/server/prepare/runShapeJob';
import {
	SHAPE_STAGES,
	type ShapeJob,
	type ShapeOutcome,
	type ShapeSource,
} from '../../../src/lib/server/prepare/shapeJob';
import { createWorkerPool } from '../../../src/lib/server/prepare/workerPool';
import { shapeFiles } from '../../../src/lib/server/shapeFiles';
import { formHash } from '../../../src/lib/server/shapeHash';
import { scratchFolder } from './samples';

/** A serrated, rooted, worn tooth: every kind of surface that a picture and a GLB must carry. */
const form: ToothForm = {
	crownHeight_mm: 30,
	baseLength_mm: 16,
	baseWidth_mm: 10,
	sections: [{ at: 0, shape: 'oval' }],
	taper: 'bullet',
	curve: { distal_deg: 18, lingual_deg: 0, startsAt: 0.3 },
	tipRadius_mm: 0.8,
	carinae: [{ where: 'distal', prominence_mm: 0.6, from: 0.05, serrationsPer5mm: 8 }],
	root: { state: 'resorbed', length_mm: 6, pitSide: 'lingual', pitDepth_mm: 3 },
	pulp: { height_mm: 8, opening: 0.5 },
	wear: { tipWornTo_mm: 29 },
};

function jobFor(dataDir: string, changes: Partial<ShapeJob> = {}): ShapeJob {
	return {
		hash: formHash(form),
		dataDir,
		source: { kind: 'model', form },
		preservations: ['tan'],
		...changes,
	};
}

function preparedOf(outcome: ShapeOutcome): PreparedShape {
	if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
	return outcome.prepared;
}

/** A scan as a file in a frame of its own: turned, moved, in centimetres. */
async function scanJob(dataDir: string, mesh: TriMesh): Promise<ShapeJob> {
	const bytes = new Uint8Array(84 + (mesh.indices.length / 3) * 50);
	const view = new DataView(bytes.buffer);
	view.setUint32(80, mesh.indices.length / 3, true);
	mesh.indices.forEach((vertex, k) => {
		const [x, y, z] = mesh.positions.subarray(vertex * 3, vertex * 3 + 3);
		const at = 84 + Math.floor(k / 3) * 50 + 12 + (k % 3) * 12;
		// +y of the tooth becomes +x of the file, +x becomes +z, +z becomes +y
		[y / 10 + 7, z / 10 - 3, x / 10 + 1].forEach((value, i) => view.setFloat32(at + i * 4, value, true));
	});
	const path = join(dataDir, 'scan.stl');
	await writeFile(path, bytes);
	const bytesHash = createHash('sha256').update(bytes).digest('hex');
	return {
		hash: bytesHash,
		dataDir,
		source: { kind: 'scan', path, bytesHash, bytes: bytes.length, units: 'cm' },
		preservations: ['black'],
	};
}

describe('runShapeJob', () => {
	it('leaves a valid GLB of two levels with regions and baked light, a picture and the facts', async () => {
		const data = await scratchFolder();
		const job = jobFor(data);
		const prepared = preparedOf(await runShapeJob(job));
		const files = shapeFiles(data, job.hash);
		expect((await readdir(files.folder)).sort()).toEqual([
			'drawing.json',
			'picture-tan.webp',
			'prepared.json',
			'shape.glb',
		]);
		expect(JSON.parse(await readFile(files.facts, 'utf8'))).toEqual(prepared);

		const glb = await readFile(files.glb);
		const report = await validateBytes(glb);
		expect(report.issues.messages.filter(({ severity }) => severity === 0)).toEqual([]);

		const [full, light] = [await readGlb(glb, 0), await readGlb(glb, 1)];
		expect(full.indices.length / 3).toBe(prepared.triangles);
		expect(prepared.triangles).toBeLessThanOrEqual(40_000);
		expect(light.indices.length / 3).toBeLessThan(5_000);
		expect(prepared.bounds.max[1]).toBeCloseTo(29, 2); // worn down to there
		for (const level of [full, light]) {
			const regions = new Set(Array.from(level.regions, (region) => REGIONS[region]));
			expect([...regions].sort()).toEqual(
				expect.arrayContaining(['carina', 'enamel', 'facet', 'pit', 'pulp', 'root']),
			);
			// the enamel is open to the light, the pulp cavity is not
			const mean = (name: string): number => {
				const of = Array.from(level.openness).filter((_, i) => REGIONS[level.regions[i]] === name);
				return of.reduce((sum, open) => sum + open, 0) / of.length;
			};
			expect(mean('enamel')).toBeGreaterThan(220);
			expect(mean('pulp')).toBeLessThan(mean('enamel') - 60);
		}
	});

	it('tells how large each region of a model is, and nothing of a scan without regions', async () => {
		const data = await scratchFolder();
		const { regionAreas_mm2: areas, measures } = preparedOf(await runShapeJob(jobFor(data)));
		const sum = Object.values(areas ?? {}).reduce((total, area) => total + area, 0);
		expect(sum / measures.surfaceArea_mm2).toBeCloseTo(1, 5);
		expect(areas?.pit).toBeGreaterThan(0);
		expect(areas?.enamel).toBeGreaterThan(areas?.facet ?? Infinity);
		const sculpted = sculpt({ ...form, root: { state: 'none' } }, { detail: 'draft' });
		if (!sculpted.ok) throw new Error(JSON.stringify(sculpted.problem));
		const scan = preparedOf(await runShapeJob(await scanJob(data, sculpted.value.mesh)));
		expect(scan.regionAreas_mm2).toBeUndefined();
	});

	it('measures the form that it was given', async () => {
		const { measures } = preparedOf(await runShapeJob(jobFor(await scratchFolder())));
		expect(measures.axialHeight_mm).toBeGreaterThan(28.5);
		expect(measures.axialHeight_mm).toBeLessThan(31);
		expect(measures.crownBaseLength_mm).toBeCloseTo(16, 0);
		expect(measures.crownBaseWidth_mm).toBeCloseTo(10, 0);
	});

	it('paints a picture that has the tooth in the middle and nothing round it, in each preservation', async () => {
		const data = await scratchFolder();
		const job = jobFor(data, { preservations: [...PRESERVATIONS] });
		preparedOf(await runShapeJob(job));
		const seen = new Set<string>();
		for (const preservation of PRESERVATIONS) {
			const picture = sharp(shapeFiles(data, job.hash).picture(preservation));
			expect(await picture.metadata()).toMatchObject({
				format: 'webp',
				width: PICTURE_PX,
				height: PICTURE_PX,
				hasAlpha: true,
			});
			const pixels = await picture.raw().toBuffer();
			const at = (x: number, y: number): number[] => [
				...pixels.subarray((y * PICTURE_PX + x) * 4, (y * PICTURE_PX + x) * 4 + 4),
			];
			expect(at(2, 2)[3]).toBe(0);
			expect(at(PICTURE_PX - 3, PICTURE_PX - 3)[3]).toBe(0);
			expect(at(PICTURE_PX / 2, PICTURE_PX / 2)[3]).toBe(255);
			seen.add(at(PICTURE_PX / 2, PICTURE_PX / 2).join());
		}
		expect(seen.size).toBe(PRESERVATIONS.length);
	});

	it('paints a missing picture from the GLB, without sculpting again', async () => {
		const data = await scratchFolder();
		const before = preparedOf(await runShapeJob(jobFor(data)));
		const files = shapeFiles(data, formHash(form));
		const glb = await readFile(files.glb);
		// a source that cannot be sculpted: it must not be asked
		const broken = { kind: 'model' as const, form: { ...form, sections: [] } };
		const job = jobFor(data, { source: broken, preservations: ['grey'] });
		expect(preparedOf(await runShapeJob(job))).toEqual(before);
		expect(await readFile(files.glb)).toEqual(glb);
		expect((await sharp(files.picture('grey')).metadata()).format).toBe('webp');
		await rm(files.facts);
		expect(await runShapeJob(job)).toMatchObject({ ok: false, failure: { of: 'form' } });
	});

	it('turns a scan from any frame and unit into the tooth frame', async () => {
		const data = await scratchFolder();
		// a crown cut at its base: the flat end is the only one
		const sculpted = sculpt({
			...form,
			carinae: [],
			root: { state: 'none' },
			pulp: undefined,
			wear: undefined,
		});
		if (!sculpted.ok) throw new Error(JSON.stringify(sculpted.problem));
		const { mesh } = sculpted.value;
		const job = await scanJob(data, mesh);
		const { measures, bounds } = preparedOf(await runShapeJob(job));
		expect(measures.axialHeight_mm).toBeCloseTo(30, 1);
		expect(measures.crownBaseLength_mm).toBeCloseTo(16, 1);
		expect(measures.crownBaseWidth_mm).toBeCloseTo(10, 1);
		expect(measures.baseMesial[0]).toBeCloseTo(-8, 1);
		expect(measures.baseDistal[0]).toBeCloseTo(8, 1);
		expect(measures.baseMesial[1]).toBeCloseTo(0, 1);
		expect(measures.apex[1]).toBeCloseTo(30, 1);
		expect(measures.apex[0]).toBeGreaterThan(1); // leans to distal
		expect(bounds.min[1]).toBeCloseTo(0, 1);
		expect(bounds.max[1]).toBeCloseTo(30, 1);
	});

	it(
		'turns a rooted scan by its marks, knows its root, and keeps the way back into the file',
		{ timeout: 90_000 },
		async () => {
			const data = await scratchFolder();
			const sculpted = sculpt({
				...form,
				root: { state: 'full', length_mm: 25, swelling: 1.3, folded: false },
			});
			if (!sculpted.ok) throw new Error(JSON.stringify(sculpted.problem));
			const { mesh, marks } = sculpted.value;
			// +y of the tooth is +x of the file, +x is +z, +z is +y; see scanJob
			const inFile = ([x, y, z]: readonly [number, number, number]): Vec3 => [y + 70, z - 30, x + 10];
			const crown = {
				apex: inFile(marks.apex),
				baseMesial: inFile(marks.baseMesial),
				baseDistal: inFile(marks.baseDistal),
			};
			const job = await scanJob(data, mesh);
			const source = { ...job.source, crown } as ShapeSource;
			const { measures, bounds, fileFrame, labial } = preparedOf(await runShapeJob({ ...job, source }));
			expect(measures.axialHeight_mm).toBeGreaterThan(28.5);
			expect(measures.axialHeight_mm).toBeLessThan(31);
			expect(measures.baseDistal[0]).toBeCloseTo(8, 0);
			expect(bounds.min[1]).toBeLessThan(-24);
			expect(bounds.max[1]).toBeCloseTo(29, 1);
			expect(labial).toBeUndefined(); // not marked
			expect(measures.warnings.map(({ code }) => code)).not.toContain('crown-base-not-marked');
			for (const point of [crown.apex, crown.baseMesial, [1, 2, 3] as Vec3])
				toFile(fileFrame!, toTooth(fileFrame!, point)).forEach((value, i) =>
					expect(value).toBeCloseTo(point[i], 6),
				);
			toTooth(fileFrame!, crown.apex).forEach((value, i) => expect(value).toBeCloseTo(measures.apex[i], 6));

			const full = await readGlb(await readFile(shapeFiles(data, job.hash).glb), 0);
			const lowest = (name: string): number =>
				Math.min(
					...Array.from(full.regions).flatMap((region, i) =>
						REGIONS[region] === name ? [full.positions[i * 3 + 1]] : [],
					),
				);
			expect(lowest('enamel')).toBeCloseTo(0, 2);
			expect(lowest('root')).toBeLessThan(-24);

			// the lip side marked: on this tooth it looks along +z, on its mirror image along -z
			const [up, down] = await Promise.all(
				[1, -1].map(async (side) => {
					const labelled = { ...source, crown: { ...crown, labial: [0, side, 0] } } as ShapeSource;
					const other = await scratchFolder();
					return preparedOf(await runShapeJob({ ...job, dataDir: other, source: labelled })).labial;
				}),
			);
			expect([up, down]).toEqual(['+z', '-z']);
		},
	);

	it('tells its stages in order', async () => {
		const stages: string[] = [];
		await runShapeJob(jobFor(await scratchFolder()), (stage) => stages.push(stage));
		expect(stages).toEqual([...SHAPE_STAGES]);
	});

	it('notices that a scan has changed or gone since the job was made', async () => {
		const data = await scratchFolder();
		const sculpted = sculpt({ ...form, root: { state: 'none' } }, { detail: 'draft' });
		if (!sculpted.ok) throw new Error(JSON.stringify(sculpted.problem));
		const job = await scanJob(data, sculpted.value.mesh);
		await writeFile(join(data, 'scan.stl'), 'solid half');
		expect(await runShapeJob(job)).toEqual({ ok: false, failure: { of: 'changed' } });
		await rm(join(data, 'scan.stl'));
		expect(await runShapeJob(job)).toEqual({ ok: false, failure: { of: 'changed' } });
	});
});

describe('workerPool', () => {
	it('prepares in a thread what the main thread would, and outlives a job that fails', async () => {
		const data = await scratchFolder();
		const pool = createWorkerPool(1);
		onTestFinished(() => pool.close());
		const bad = jobFor(data, { hash: 'not a hash' });
		const [failed, made] = await Promise.all([pool.run(bad), pool.run(jobFor(data))]);
		expect(failed).toMatchObject({ ok: false, failure: { of: 'crash' } });
		const other = await scratchFolder();
		expect(made).toEqual(await runShapeJob(jobFor(other)));
		const glb = shapeFiles(data, formHash(form)).glb;
		expect(await readFile(glb)).toEqual(await readFile(shapeFiles(other, formHash(form)).glb));
	});

	it('gives up what is waiting when it closes', async () => {
		const pool = createWorkerPool(1);
		const data = await scratchFolder();
		const results = [pool.run(jobFor(data)), pool.run(jobFor(data))];
		await pool.close();
		for (const result of results) expect(await result).toEqual({ ok: false, failure: { of: 'changed' } });
	});
});
