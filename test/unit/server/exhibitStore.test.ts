import { readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { createExhibitStore, type ExhibitStore } from '../../../src/lib/server/exhibitStore';
import { countingPreparer, label, putContent, putSpecimen, quiet } from './contentFolder';
import { put, scratchFolder } from './samples';

interface Setup {
	content: string;
	data: string;
	jobs: { hash: string }[];
	open(watch?: boolean): ExhibitStore;
}

async function setup(): Promise<Setup> {
	const content = join(await scratchFolder(), 'content');
	const data = await scratchFolder();
	await putContent(content);
	const { jobs, prepare } = countingPreparer();
	return {
		content,
		data,
		jobs,
		open(watch = false) {
			const store = createExhibitStore({ contentDir: content, dataDir: data, logger: quiet, watch, prepare });
			onTestFinished(() => store.close());
			return store;
		},
	};
}

const titles = (store: ExhibitStore): string[] =>
	store.current()?.specimens.map(({ text }) => text.en.title) ?? [];
const errors = (store: ExhibitStore): string[] =>
	store
		.problems()
		.filter(({ severity }) => severity === 'error')
		.map(({ file }) => file);

/** The next change that a store tells; fails after a while. */
function nextChange(store: ExhibitStore): Promise<string> {
	return new Promise((resolve, reject) => {
		const timer = setTimeout(() => reject(new Error('the store told no change within 5 s')), 5_000);
		const end = store.subscribe(({ hash }) => {
			clearTimeout(timer);
			end();
			resolve(hash);
		});
	});
}

describe('exhibitStore', () => {
	it('reads the folder, has each shape prepared once, and shows the exhibit', async () => {
		const { open, jobs } = await setup();
		const store = open();
		await store.ready;
		expect(errors(store)).toEqual([]);
		expect(titles(store)).toEqual(['First tooth', 'Second tooth']);
		expect(store.current()?.hash).toMatch(/^[0-9a-f]{64}$/);
		// both specimens have the same form
		expect(jobs.length).toBe(1);
		expect(store.preparing()).toEqual({ done: 1, total: 1, current: [], remaining_s: 0 });
	});

	it('prepares nothing again at the next start', async () => {
		const { open, jobs } = await setup();
		const first = open();
		await first.settled();
		await first.close();
		const second = open();
		await second.ready;
		await second.settled();
		expect(second.current()).toEqual(first.current());
		expect(jobs.length).toBe(1);
	});

	it('is ready from the stored exhibit while the folder has not changed, else once it has been read', async () => {
		const { open, content } = await setup();
		await put(content, 'stray.txt', 'x'); // worth a warning
		const first = open();
		await first.settled();
		expect(first.problems().map(({ file }) => file)).toEqual(['stray.txt']);
		await first.close();
		const unchanged = open();
		await unchanged.ready;
		expect(unchanged.current()).toEqual(first.current());
		expect(unchanged.problems()).toEqual([]); // the files have not been read yet
		await unchanged.settled();
		expect(unchanged.problems().map(({ file }) => file)).toEqual(['stray.txt']);
		await unchanged.close();
		await put(content, 'specimens/a/label.en.md', label('Edited while off'));
		const changed = open();
		await changed.ready;
		expect(titles(changed)).toEqual(['Edited while off', 'Second tooth']);
	});

	it('prepares a shape again when its form changes, and shows the old one meanwhile', async () => {
		const { open, jobs, content } = await setup();
		const store = open();
		await store.settled();
		await putSpecimen(content, 'b', 'Taller tooth', 30);
		await store.reload();
		await store.settled();
		expect(jobs.length).toBe(2);
		expect(titles(store)).toEqual(['First tooth', 'Taller tooth']);
		const [a, b] = store.current()!.specimens;
		expect(b.prepared.hash).not.toBe(a.prepared.hash);
	});

	it('serves on without a new scan while that is being prepared, and takes it in when it is', async () => {
		const { content, data } = await setup();
		const { prepare } = countingPreparer();
		let finish = (): void => undefined;
		const finished = new Promise<void>((resolve) => (finish = resolve));
		const store = createExhibitStore({
			contentDir: content,
			dataDir: data,
			logger: quiet,
			watch: false,
			prepare: async (job, report) => {
				if (job.source.kind === 'scan') {
					report('reading');
					report('measuring');
					await finished;
				}
				return prepare(job, report);
			},
		});
		onTestFinished(() => store.close());
		await store.settled();
		const before = store.current();

		await putSpecimen(content, 'c', 'Scanned tooth');
		const yaml = 'shape: { scan: { file: scan.stl, units: mm } }\n';
		const text = await readFile(join(content, 'specimens/c/specimen.yaml'), 'utf8');
		await put(content, 'specimens/c/specimen.yaml', text.replace(/shape:[^]*?none \}\n/, yaml));
		await put(content, 'specimens/c/scan.stl', 'solid one');
		await put(content, 'specimens/a/label.en.md', label('Edited meanwhile'));
		await store.reload();
		expect(errors(store)).toEqual([]);
		expect(titles(store)).toEqual(['Edited meanwhile', 'Second tooth']);
		expect(store.current()?.hash).not.toBe(before?.hash);
		expect(store.preparing()).toMatchObject({
			done: 0,
			total: 1,
			current: [{ specimen: 'c', stage: 'measuring' }],
		});

		const change = nextChange(store);
		finish();
		await change;
		expect(titles(store)).toEqual(['Edited meanwhile', 'Second tooth', 'Scanned tooth']);
		expect(store.preparing()).toMatchObject({ done: 1, total: 1, current: [] });
	});

	it('tells a change of a watched file with the new hash', async () => {
		const { open, content } = await setup();
		const store = open(true);
		await store.settled();
		await watching();
		const before = store.current()?.hash;
		const change = nextChange(store);
		await put(content, 'specimens/a/label.en.md', label('Renamed tooth'));
		const hash = await change;
		expect(hash).not.toBe(before);
		expect(store.current()?.hash).toBe(hash);
		expect(titles(store)).toEqual(['Renamed tooth', 'Second tooth']);
	});

	it('keeps the last good version of a specimen through a bad edit, and says what is wrong', async () => {
		const { open, content } = await setup();
		const store = open();
		await store.settled();
		const before = store.current()?.hash;
		await put(content, 'specimens/a/label.en.md', '---\ntitel: Oh dear\n');
		await store.reload();
		expect(errors(store)).toContain('specimens/a/label.en.md');
		expect(store.current()?.hash).toBe(before);
		await put(content, 'specimens/a/label.en.md', label('Mended tooth'));
		await store.reload();
		expect(errors(store)).toEqual([]);
		expect(titles(store)).toEqual(['Mended tooth', 'Second tooth']);
	});

	it('leaves a specimen out that has never been good, and takes out one whose folder has gone', async () => {
		const { open, content } = await setup();
		await put(content, 'specimens/c/specimen.yaml', 'accession: [');
		const store = open();
		await store.settled();
		expect(titles(store)).toEqual(['First tooth', 'Second tooth']);
		await rm(join(content, 'specimens/b'), { recursive: true });
		await store.reload();
		expect(titles(store)).toEqual(['First tooth']);
	});

	it('keeps everything while exhibit.yaml is broken', async () => {
		const { open, content } = await setup();
		const store = open();
		await store.settled();
		const before = store.current();
		await put(content, 'exhibit.yaml', 'museum: [');
		await store.reload();
		expect(errors(store)).toContain('exhibit.yaml');
		expect(store.current()).toBe(before);
	});

	it('shows the stored exhibit after a restart with broken content', async () => {
		const { open, content } = await setup();
		const first = open();
		await first.settled();
		await first.close();
		await put(content, 'exhibit.yaml', 'museum: [');
		await put(content, 'specimens/a/specimen.yaml', 'accession: [');
		const second = open();
		await second.ready;
		expect(second.current()).toEqual(first.current());
		expect(errors(second)).toContain('exhibit.yaml');
	});

	it('keeps a specimen from the stored exhibit whose files were broken while the server was off', async () => {
		const { open, content } = await setup();
		const first = open();
		await first.settled();
		await first.close();
		await put(content, 'specimens/a/specimen.yaml', 'accession: [');
		await put(content, 'specimens/b/label.en.md', label('Edited tooth'));
		const second = open();
		await second.settled();
		expect(titles(second)).toEqual(['First tooth', 'Edited tooth']);
	});

	it('starts from the last whole snapshot when the process was killed while writing the next', async () => {
		const { open, data, content } = await setup();
		const first = open();
		await first.settled();
		await first.close();
		// what a kill between writing and renaming leaves behind
		await put(data, '.snapshot.json.1.aa.tmp', '{"version":1,"exhibit":{"museum":"Half');
		await rm(content, { recursive: true });
		const second = open();
		await second.ready;
		expect(titles(second)).toEqual(['First tooth', 'Second tooth']);
	});

	it('keeps the exhibit while the folder is away, and follows it when it comes back', async () => {
		const { open, content } = await setup();
		const store = open(true);
		await store.settled();
		await watching();
		const before = store.current()?.hash;
		await rename(content, `${content}-away`);
		await until(() => store.problems().length > 0);
		expect(store.current()?.hash).toBe(before);
		expect(store.problems().map(({ id }) => id)).toEqual(['folder-unreadable']);
		const change = nextChange(store);
		await put(`${content}-away`, 'specimens/a/label.en.md', label('Back again'));
		await rename(`${content}-away`, content);
		await change;
		expect(titles(store)).toEqual(['Back again', 'Second tooth']);
		const later = nextChange(store);
		await put(content, 'specimens/a/label.en.md', label('And watched'));
		await later;
		expect(titles(store)).toEqual(['And watched', 'Second tooth']);
	});

	it('keeps the exhibit when the disk under the folder is pulled out, which leaves it empty', async () => {
		const { open, content } = await setup();
		const store = open(true);
		await store.settled();
		await watching();
		const before = store.current()?.hash;
		const inside = await readdir(content);
		for (const name of inside) await rename(join(content, name), `${content}-${name}`);
		await until(() => store.problems().some(({ id }) => id === 'folder-unreadable'));
		expect(store.current()?.hash).toBe(before);
		for (const name of inside) await rename(`${content}-${name}`, join(content, name));
		await until(() => store.problems().every(({ id }) => id !== 'folder-unreadable'));
		expect(store.current()?.hash).toBe(before);
	});

	it('shows nothing and stays up where there has never been content', async () => {
		const { open, content } = await setup();
		await rm(content, { recursive: true });
		const store = open();
		await store.ready;
		expect(store.current()).toBeNull();
		expect(errors(store).length).toBeGreaterThan(0);
	});

	it('explains a shape that cannot be made, and keeps the others', async () => {
		const { content } = await setup();
		const { prepare } = countingPreparer();
		const data = await scratchFolder();
		await putSpecimen(content, 'b', 'Second tooth', 25);
		const store = createExhibitStore({
			contentDir: content,
			dataDir: data,
			logger: quiet,
			watch: false,
			prepare: async (job) =>
				job.source.kind === 'model' && job.source.form.crownHeight_mm === 25
					? {
							ok: false,
							failure: {
								of: 'form',
								problem: { code: 'tip-too-blunt', path: 'tipRadius_mm', found: 0.5, max: 0.4 },
							},
						}
					: prepare(job),
		});
		onTestFinished(() => store.close());
		await store.settled();
		expect(titles(store)).toEqual(['First tooth']);
		expect(store.problems()).toEqual([
			expect.objectContaining({
				id: 'tip-too-blunt',
				file: 'specimens/b/specimen.yaml',
				path: 'shape.model.tip_radius_mm',
				line: 16,
			}),
		]);
	});

	it('leaves out a scan whose unit cannot be that of its card, and shows the old one meanwhile', async () => {
		const { open, content } = await setup();
		const spec = (units: string, card: string): string =>
			`accession: SKM b
group: mosasaurus
part: crown
preservation: honey
bed: marl
identified: { by: Skerrow Museum, certainty: likely }
shape: { scan: { file: scan.stl, units: ${units} } }
declared: { ${card} }
licence: http://creativecommons.org/licenses/by/4.0/
rights_holder: Skerrow Museum
sources: [book]
`;
		await put(content, 'specimens/b/scan.stl', 'solid one');
		// the preparer of these tests finds a crown 20 mm high
		await put(content, 'specimens/b/specimen.yaml', spec('mm', 'crown_height_mm: 20'));
		const store = open();
		await store.settled();
		expect(store.problems()).toEqual([]);
		const shown = store.current()?.specimens[1];

		await put(content, 'specimens/b/specimen.yaml', spec('mm', 'crown_height_mm: 508'));
		await store.reload();
		await store.settled();
		expect(store.problems()).toEqual([
			expect.objectContaining({
				id: 'scan-unit',
				severity: 'error',
				file: 'specimens/b/specimen.yaml',
				line: 7,
				column: 41,
				remedy: 'Write units: in',
			}),
		]);
		expect(store.current()?.specimens[1]).toEqual(shown);

		await put(content, 'specimens/b/specimen.yaml', spec('mm', 'crown_height_mm: 30'));
		await store.reload();
		await store.settled();
		expect(store.problems().map(({ id, severity }) => [id, severity])).toEqual([
			['unlike-the-card', 'warning'],
		]);
		expect(store.current()?.specimens[1].declared).toEqual({ crownHeight_mm: 30 });
	});

	it('prepares a scan again when its bytes or units change, and only then', async () => {
		const { open, content, jobs } = await setup();
		const spec = (units: string, note = ''): string =>
			`accession: SKM b${note}
group: mosasaurus
part: crown
preservation: honey
identified: { by: Skerrow Museum, certainty: likely }
shape: { scan: { file: scan.stl, units: ${units} } }
licence: http://creativecommons.org/licenses/by/4.0/
rights_holder: Skerrow Museum
sources: [book]
`;
		await put(content, 'specimens/b/specimen.yaml', spec('mm'));
		await put(content, 'specimens/b/scan.stl', 'solid one');
		const store = open();
		await store.settled();
		expect(errors(store)).toEqual([]);
		expect(titles(store)).toEqual(['First tooth', 'Second tooth']);
		expect(jobs.length).toBe(2);
		const hash = (): string | undefined => store.current()?.specimens[1].prepared.hash;
		const first = hash();

		await put(content, 'specimens/b/specimen.yaml', spec('mm', 'x'));
		await put(content, 'specimens/b/scan.stl', 'solid one'); // written again, the same
		await store.reload();
		await store.settled();
		expect(store.current()?.specimens[1].accession).toBe('SKM bx');
		expect(jobs.length).toBe(2);

		await put(content, 'specimens/b/scan.stl', 'solid two!');
		await store.reload();
		await store.settled();
		expect(jobs.length).toBe(3);
		expect(hash()).not.toBe(first);

		await put(content, 'specimens/b/specimen.yaml', spec('cm'));
		await store.reload();
		await store.settled();
		expect(jobs.length).toBe(4);
	});

	it('writes into the data folder only', async () => {
		const { open, content } = await setup();
		const before = (await stat(content)).mtimeMs;
		const store = open();
		await store.settled();
		expect((await stat(content)).mtimeMs).toBe(before);
	});
});

/** Time for the watcher to have seen the folder; it tells nothing of changes made before. */
const watching = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 400));

async function until(condition: () => boolean): Promise<void> {
	for (let waited = 0; !condition(); waited += 20) {
		if (waited > 5_000) throw new Error('until: it did not come about within 5 s');
		await new Promise((resolve) => setTimeout(resolve, 20));
	}
}
