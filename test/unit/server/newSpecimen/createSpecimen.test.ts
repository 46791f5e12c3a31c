import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { NewSpecimen } from '../../../../src/lib/content/newSpecimen';
import { createContentCache, loadContent } from '../../../../src/lib/content/loadContent';
import { fsReader } from '../../../../src/lib/server/fsReader';
import { createSpecimen } from '../../../../src/lib/server/newSpecimen/createSpecimen';
import { parseNewSpecimen } from '../../../../src/lib/server/newSpecimen/parseNewSpecimen';
import { lookAtScan } from '../../../../src/lib/server/uploads/lookAtScan';
import { scanUploads } from '../../../../src/lib/server/uploads/scanUploads';
import { fanned, polygonCone, stlBinary } from '../../scan/writers';
import { deskFolder } from '../desk/deskFolder';
import { put } from '../samples';

const TEMPLATES = join(import.meta.dirname, '../../../../content/templates/specimens');
const SCAN = stlBinary(fanned(polygonCone(8, 30)));
const MODEL: NewSpecimen['shape'] = {
	kind: 'model',
	like: 'a',
	crownHeight_mm: 40,
	baseLength_mm: 18,
	baseWidth_mm: 15,
};
const asked = (shape: NewSpecimen['shape'], other: Partial<NewSpecimen> = {}): NewSpecimen => ({
	id: 'skm-0300',
	accession: 'SKM 0300: “a”',
	group: 'mosasaurus',
	part: 'crown',
	preservation: 'tan',
	bed: 'marl',
	by: 'Skerrow Museum',
	certainty: 'unsure',
	licence: 'http://creativecommons.org/licenses/by/4.0/',
	rightsHolder: 'Skerrow # Museum',
	sources: ['book'],
	title: 'A stout crown: new',
	short: 'Found this spring',
	alt: 'A plain cone',
	text: 'Two edges run up it.\n\n---\n\nIt may have cut.',
	shape,
	...other,
});

async function place(withTemplates = true) {
	const folder = await deskFolder();
	if (withTemplates)
		for (const kind of ['new-model', 'new-scan'])
			await put(
				folder.contentDir,
				`templates/specimens/${kind}/specimen.yaml`,
				await readFile(join(TEMPLATES, kind, 'specimen.yaml'), 'utf8'),
			);
	const uploads = scanUploads({
		dataDir: folder.dataDir,
		now: Date.now,
		look: async (path, name) => lookAtScan(await readFile(path), name),
		mostBytes: 1e7,
	});
	const upload = async (): Promise<string> => {
		const body = new Blob([SCAN as Uint8Array<ArrayBuffer>]).stream();
		const got = await uploads.receive(body, SCAN.length, 'up.stl');
		if (!got.ok) throw new Error('not taken in');
		return got.value.upload;
	};
	const make = (what: NewSpecimen) => createSpecimen(folder.desk, uploads, what, 'en');
	const load = () => loadContent(fsReader(folder.contentDir), createContentCache());
	return { ...folder, uploads, upload, make, load };
}

describe('createSpecimen', () => {
	it.each([true, false])(
		'makes a draft of a scan, in one save that can be undone (templates: %s)',
		async (templates) => {
			const { desk, upload, uploads, make, load, read, contentDir } = await place(templates);
			const name = await upload();
			const before = (await load()).problems;
			const made = await make(
				asked({ kind: 'scan', upload: name, units: 'mm', crownHeight_mm: templates ? 30 : null }),
			);
			if (!made.ok) throw new Error(JSON.stringify(made.problem));
			expect(made.value.needsMarks).toBe(false);
			expect((await readdir(join(contentDir, 'specimens/skm-0300'))).sort()).toEqual([
				'label.en.md',
				'scan.stl',
				'specimen.yaml',
			]);
			const facts = await read('specimens/skm-0300/specimen.yaml');
			if (templates) {
				expect(facts).toMatch(/^# yaml-language-server: .*\nstatus: draft\n/);
				expect(facts).toContain('# What the card in the drawer says');
				expect(facts).toContain('# um, mm, cm, m or in');
			}
			expect(facts).not.toMatch(/for example|Copy this folder|take away/);
			expect(parse(facts)).toEqual({
				status: 'draft',
				accession: 'SKM 0300: “a”',
				group: 'mosasaurus',
				part: 'crown',
				preservation: 'tan',
				bed: 'marl',
				identified: { by: 'Skerrow Museum', certainty: 'unsure' },
				shape: { scan: { file: 'scan.stl', units: 'mm' } },
				...(templates && { declared: { crown_height_mm: 30 } }),
				licence: 'http://creativecommons.org/licenses/by/4.0/',
				rights_holder: 'Skerrow # Museum',
				sources: ['book'],
			});
			const { draft, problems } = await load();
			expect(problems).toEqual(before);
			const specimen = draft?.specimens.find(({ id }) => id === 'skm-0300');
			expect(specimen?.text.en?.title).toBe('A stout crown: new');
			expect(new Uint8Array(await readFile(join(contentDir, 'specimens/skm-0300/scan.stl')))).toEqual(SCAN);
			// the upload has done its work
			expect(await uploads.find(name)).toBeNull();

			const [version] = await desk.versions();
			expect(version.what).toEqual({
				code: 'new-specimen',
				data: { id: 'skm-0300', accession: 'SKM 0300: “a”' },
			});
			const undone = await desk.restore({
				versionId: version.id,
				side: 'before',
				scope: 'version',
				what: { code: 'undone' },
			});
			expect(undone.ok).toBe(true);
			expect(await readdir(join(contentDir, 'specimens'))).not.toContain('skm-0300');
		},
	);

	it.each([true, false])('makes a model from another’s form, to size (templates: %s)', async (templates) => {
		const { make, load, read } = await place(templates);
		const made = await make(asked(MODEL, { bed: '', alt: '', text: '' }));
		if (!made.ok) throw new Error(JSON.stringify(made.problem));
		const facts = await read('specimens/skm-0300/specimen.yaml');
		const { model } = (parse(facts) as { shape: { model: Record<string, unknown> } }).shape;
		expect(model).toMatchObject({
			based_on: ['book'],
			crown_height_mm: 40,
			base_length_mm: 18,
			base_width_mm: 15,
			tip_radius_mm: 1,
			curve: { distal_deg: 10, lingual_deg: 0, starts_at: 0.3 },
		});
		if (templates) expect(facts).toContain('taper: cone             # needle, cone, bullet or dome');
		expect((await load()).draft?.specimens.map(({ id }) => id)).toContain('skm-0300');
	});

	it('never touches what is there', async () => {
		const { make, read, hidden, contentDir } = await place();
		const before = await read('specimens/a/specimen.yaml');
		expect(await make(asked(MODEL, { id: 'a' }))).toEqual({ ok: false, problem: { code: 'taken' } });
		expect(await read('specimens/a/specimen.yaml')).toBe(before);
		// a folder with a scan alone is somebody's too
		await put(contentDir, 'specimens/skm-0300/label.en.md', 'mine');
		expect(await make(asked(MODEL))).toEqual({ ok: false, problem: { code: 'taken' } });
		expect(await hidden()).toEqual([]);
	});

	it('writes nothing where something is missing or wrong', async () => {
		const { make, upload, contentDir, uploads } = await place();
		const gone = asked({ kind: 'scan', upload: 'f'.repeat(32), units: 'mm', crownHeight_mm: null });
		expect(await make(gone)).toEqual({ ok: false, problem: { code: 'upload-gone' } });
		expect(await make(asked({ ...MODEL, like: 'nobody' } as never))).toEqual({
			ok: false,
			problem: { code: 'no-form' },
		});
		const name = await upload();
		const wrong = await make(
			asked(
				{ kind: 'scan', upload: name, units: 'mm', crownHeight_mm: null },
				{ title: '', group: 'unknown' },
			),
		);
		if (wrong.ok || wrong.problem.code !== 'has-errors') throw new Error('was saved');
		const said = wrong.problem.fresh.map(({ file, path }) => `${file} ${path}`);
		expect(said).toContain('specimens/skm-0300/specimen.yaml group');
		expect(said).toContain('specimens/skm-0300/label.en.md title');
		expect(await readdir(join(contentDir, 'specimens'))).toEqual(['a', 'b']);
		// it can be tried again
		expect(await uploads.find(name)).not.toBeNull();
	});
});

describe('parseNewSpecimen', () => {
	it('takes what the page sends, and no path in the place of an id', () => {
		expect(parseNewSpecimen(asked(MODEL))).toEqual(asked(MODEL));
		for (const id of ['../x', 'a/b', 'A', '', 'a b', '.', 'x'.repeat(61)])
			expect(parseNewSpecimen(asked(MODEL, { id })), id).toBeNull();
		for (const other of [
			{ shape: { ...MODEL, like: '../../etc' } },
			{ group: '../x' },
			{ bed: '..' },
			{ title: 'a\nb' },
			{ shape: { kind: 'scan', upload: 'x', units: 'ell', crownHeight_mm: null } },
			{ file: 'scan.stl' },
		])
			expect(parseNewSpecimen({ ...asked(MODEL), ...other }), JSON.stringify(other)).toBeNull();
	});
});
