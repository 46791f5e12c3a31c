import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { toTooth } from '../../../src/lib/content/fileFrame';
import { orient } from '../../../src/lib/domain/mesh/orient';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import type { Vec3 } from '../../../src/lib/domain/vec3';
import { createExhibitStore, type ExhibitStore } from '../../../src/lib/server/exhibitStore';
import { readForMarking, saveSpecimen } from '../../../src/lib/server/marking';
import { runShapeJob } from '../../../src/lib/server/prepare/runShapeJob';
import { readGlb } from '../../../src/lib/server/prepare/readGlb';
import { shapeFiles } from '../../../src/lib/server/shapeFiles';
import { label, putContent, quiet } from './contentFolder';
import { put, scratchFolder } from './samples';
import { deskOn } from './desk/deskFolder';

/** A rooted tooth lying along its file's z axis, far from the origin. */
const sculpted = sculpt(
	{
		crownHeight_mm: 26,
		baseLength_mm: 14,
		baseWidth_mm: 11,
		sections: [{ at: 0, shape: 'oval' }],
		taper: 'bullet',
		curve: { distal_deg: 16, lingual_deg: 0, startsAt: 0.2 },
		tipRadius_mm: 0.8,
		carinae: [],
		root: { state: 'full', length_mm: 24, swelling: 1.2, folded: false },
	},
	{ detail: 'draft' },
);
if (!sculpted.ok) throw new Error(JSON.stringify(sculpted.problem));
const inFile = ([x, y, z]: Vec3): Vec3 => [z + 60, x - 20, y + 35];
const { mesh, marks } = sculpted.value;
const { apex, baseMesial, baseDistal } = marks;
const RIGHT = { apex: inFile(apex), baseMesial: inFile(baseMesial), baseDistal: inFile(baseDistal) };

function scanFile(): Buffer {
	const rows = [
		[0, 0, 1],
		[1, 0, 0],
		[0, 1, 0],
	] as const;
	const { positions, indices } = orient(mesh, rows, [60, -20, 35]);
	const file = Buffer.alloc(84 + (indices.length / 3) * 50);
	file.writeUInt32LE(indices.length / 3, 80);
	indices.forEach((vertex, k) => {
		for (let axis = 0; axis < 3; axis++)
			file.writeFloatLE(
				positions[vertex * 3 + axis],
				84 + Math.floor(k / 3) * 50 + 12 + (k % 3) * 12 + axis * 4,
			);
	});
	return file;
}

/** Marks typed in another unit: the plane through them passes the tooth by. */
const FACTS = `accession: SKM 9001   # as on the box
group: mosasaurus
part: rooted-tooth
preservation: tan
bed: marl
identified: { by: Skerrow Museum, certainty: unsure }
shape:
  scan:
    file: scan.stl
    units: mm
    crown: { apex_mm: [2.36, -0.7, 2.4], base_mesial_mm: [2.36, -1.06, 1.38], base_distal_mm: [2.36, -0.51, 1.38] }
licence: http://creativecommons.org/licenses/by/4.0/
rights_holder: Skerrow Museum
sources: [book]
`;

async function open(content: string, data: string, jobs: { count: number }): Promise<ExhibitStore> {
	const store = createExhibitStore({
		contentDir: content,
		dataDir: data,
		logger: quiet,
		watch: false,
		prepare(job, report) {
			jobs.count++;
			return runShapeJob(job, report);
		},
	});
	onTestFinished(() => store.close());
	await store.settled();
	return store;
}

describe('a scan that cannot be measured before its crown is marked', () => {
	it('is prepared for the desk only, and whole once it is marked', { timeout: 90_000 }, async () => {
		const [content, data] = [await scratchFolder(), await scratchFolder()];
		await putContent(content);
		await put(content, 'specimens/skm-9001/specimen.yaml', FACTS);
		await put(content, 'specimens/skm-9001/label.en.md', label('A long tooth'));
		await writeFile(join(content, 'specimens/skm-9001/scan.stl'), scanFile());
		const jobs = { count: 0 };
		const store = await open(content, data, jobs);

		// visitors see the rest of the exhibit
		const ids = (from: ExhibitStore) => from.current()?.specimens.map(({ id }) => id);
		expect(ids(store)).toEqual(['a', 'b']);
		expect(store.problems().filter(({ severity }) => severity === 'error')).toMatchObject([
			{
				id: 'shape-no-base',
				file: 'specimens/skm-9001/specimen.yaml',
				remedy: expect.stringContaining('at the desk') as string,
			},
		]);
		expect(store.provisional('a')).toBeNull();

		// the desk has it upright along its longest side, and knows the way back into the file
		const { shape } = store.provisional('skm-9001')!;
		const files = shapeFiles(data, shape.hash);
		const level = await readGlb(await readFile(files.glb), 0);
		expect(level.indices.length / 3).toBe(shape.triangles);
		expect(shape.bounds.min[1]).toBeCloseTo(0, 3);
		expect(shape.bounds.max[1]).toBeCloseTo(50, 0);
		expect((await readFile(files.picture('tan'))).length).toBeGreaterThan(500);
		const [x, y, z] = toTooth(shape.fileFrame, RIGHT.apex);
		expect(y).toBeGreaterThan(shape.bounds.max[1] - 0.1);
		expect(x).toBeGreaterThan(shape.bounds.min[0]);
		expect(z).toBeGreaterThan(shape.bounds.min[2]);

		// another start costs nothing and knows it again
		const before = jobs.count;
		const again = await open(content, data, jobs);
		expect(jobs.count).toBe(before);
		expect(again.provisional('skm-9001')).toEqual(store.provisional('skm-9001'));

		// marked
		const state = await readForMarking(content, 'skm-9001');
		if (!state.ok) throw new Error(state.problem.message);
		const saved = await saveSpecimen(await deskOn(content), content, 'skm-9001', state.value.hash, {
			crown: RIGHT,
		});
		expect(saved.ok).toBe(true);
		await store.reload();
		await store.settled();
		expect(ids(store)).toEqual(['a', 'b', 'skm-9001']);
		expect(store.provisional('skm-9001')).toBeNull();
		expect(store.problems().filter(({ severity }) => severity === 'error')).toEqual([]);
		const { measures } = store.current()!.specimens[2].prepared;
		expect(measures.axialHeight_mm).toBeCloseTo(26, 0);
		expect(measures.crownBaseLength_mm).toBeCloseTo(14, 0);
	});

	it('keeps its shape at the desk in another colour, too', { timeout: 60_000 }, async () => {
		const [content, data] = [await scratchFolder(), await scratchFolder()];
		await putContent(content);
		await put(content, 'specimens/skm-9001/specimen.yaml', FACTS);
		await put(content, 'specimens/skm-9001/label.en.md', label('A long tooth'));
		await writeFile(join(content, 'specimens/skm-9001/scan.stl'), scanFile());
		const store = await open(content, data, { count: 0 });
		await put(content, 'specimens/skm-9001/specimen.yaml', FACTS.replace('tan', 'black'));
		await store.reload();
		await store.settled();
		const { shape } = store.provisional('skm-9001')!;
		expect((await readFile(shapeFiles(data, shape.hash).picture('black'))).length).toBeGreaterThan(500);
		// and a file that holds no tooth at all leaves nothing to mark
		await writeFile(join(content, 'specimens/skm-9001/scan.stl'), 'solid nothing\nendsolid nothing\n');
		await store.reload();
		await store.settled();
		expect(store.provisional('skm-9001')).toBeNull();
	});
});
