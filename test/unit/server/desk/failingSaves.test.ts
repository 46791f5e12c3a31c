import { appendFile, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { realFs, type DeskFs } from '../../../../src/lib/server/desk/deskFs';
import { label } from '../contentFolder';
import { deskFolder, FACTS, hash, LABEL, type Desk } from './deskFolder';

const what = { code: 'edited' };
const by = 'desk' as const;
const OTHER = 'specimens/b/label.en.md';
const NEW = 'specimens/new/README.md';

/** A file system in which one operation fails from its nth call on paths that match. */
function failing(name: 'open' | 'rename' | 'rm' | 'mkdir', code: string, on: RegExp, nth = 1): DeskFs {
	let calls = 0;
	const fails = async (...args: unknown[]) => {
		if (on.test(String(args.at(name === 'rename' ? 1 : 0))) && ++calls >= nth && calls < nth + 1)
			throw Object.assign(new Error(code), { code });
		return (realFs[name] as (...args: unknown[]) => unknown)(...args);
	};
	return { ...realFs, [name]: fails };
}

/** A file system whose disk is full for files that match. */
const fullDisk = (on: RegExp): DeskFs => ({
	...realFs,
	open: async (...args: Parameters<DeskFs['open']>) => {
		const file = await realFs.open(...args);
		if (on.test(String(args[0]))) {
			file.writeFile = async () => {
				// half of it is written, as a real disk does
				await file.write('ha');
				throw Object.assign(new Error('no space left'), { code: 'ENOSPC' });
			};
		}
		return file;
	},
});

async function everything({ contentDir }: Desk): Promise<Record<string, string>> {
	const found: Record<string, string> = {};
	for (const entry of await readdir(contentDir, { recursive: true, withFileTypes: true })) {
		const path = join(entry.parentPath, entry.name);
		found[path.slice(contentDir.length)] = entry.isFile() ? await readFile(path, 'utf8') : '(folder)';
	}
	return found;
}

describe('a save that cannot be written', () => {
	it.each([
		['a full disk at the second file', fullDisk(/\.label\.en\.md\..*\.tmp$/), 'ENOSPC'],
		['a full disk where versions are kept', fullDisk(/versions\/texts/), 'ENOSPC'],
		['a full disk at the journal', fullDisk(/journal\.json/), 'ENOSPC'],
		['a full disk at the list of versions', fullDisk(/versions\.jsonl$/), 'ENOSPC'],
		['a folder that may not be written', failing('open', 'EACCES', /specimens\/b\/\./), 'EACCES'],
		['a disk that may only be read', failing('open', 'EROFS', /specimens\/a\/\./), 'EROFS'],
		['a folder that may not be made', failing('mkdir', 'EACCES', /specimens\/new/), 'EACCES'],
		[
			'a file that another program holds, at the first',
			failing('rename', 'EPERM', /a\/label\.en\.md$/),
			'EPERM',
		],
		[
			'a file that another program holds, at the second',
			failing('rename', 'EBUSY', /b\/label\.en\.md$/),
			'EBUSY',
		],
		['a file that cannot be taken away', failing('rm', 'EPERM', /old\.md$/), 'EPERM'],
	])('leaves all as it was: %s', async (_, fs, reason) => {
		const folder = await deskFolder({ fs });
		await folder.write('old.md', 'to be taken away');
		const before = await everything(folder);
		const changes = [
			await folder.change(LABEL, label('One')),
			await folder.change(OTHER, label('Two')),
			{ path: NEW, text: 'new', base: null },
			await folder.change('old.md', null),
		];
		const saved = await folder.desk.save({ changes, by, what, evenIfBroken: true });
		expect(saved).toMatchObject({ ok: false, problem: { code: 'not-written', reason } });
		expect(await everything(folder)).toEqual(before);
		expect(await readdir(join(folder.dataDir, 'versions'))).not.toContain('journal.json');
		// and it goes through once the disk is well again
		const again = folder.again();
		expect(await again.versions()).toEqual([]);
		expect((await again.save({ changes, by, what, evenIfBroken: true })).ok).toBe(true);
		expect(await again.versions()).toHaveLength(1);
	});
});

describe('two who save', () => {
	it('takes one and tells the other, with both texts', async () => {
		const { desk, change, read } = await deskFolder();
		const [one, two] = [await change(LABEL, label('One')), await change(LABEL, label('Two'))];
		const [first, second] = await Promise.all([
			desk.save({ changes: [one], by, what }),
			desk.save({ changes: [two], by, what }),
		]);
		expect(first.ok).toBe(true);
		expect(second).toEqual({
			ok: false,
			problem: {
				code: 'changed-underneath',
				clashes: [
					{
						path: LABEL,
						started: label('First tooth'),
						ours: label('Two'),
						theirs: label('One'),
						theirBase: hash(label('One')),
						merged: null,
					},
				],
			},
		});
		expect(await read(LABEL)).toBe(label('One'));
	});

	it('offers both changes in one text where they do not touch, and writes it when asked to', async () => {
		const { desk, read, write } = await deskFolder();
		const started = `${label('First tooth')}\nA second paragraph.\n\nA third.\n`;
		await write(LABEL, started);
		const opened = await desk.open(LABEL);
		if (!opened.ok) throw new Error(opened.problem.code);
		const theirs = started.replace('title: First tooth', 'title: Oldest tooth');
		await write(LABEL, theirs);
		const ours = started.replace('A third.', 'The last.');
		const changes = [{ path: LABEL, text: ours, base: opened.value.base, typed: true }];
		const saved = await desk.save({ changes, by, what });
		if (saved.ok || saved.problem.code !== 'changed-underneath') throw new Error('not noticed');
		const [clash] = saved.problem.clashes;
		const both = theirs.replace('A third.', 'The last.');
		expect(clash).toMatchObject({ started, ours, theirs, merged: both });
		expect(await read(LABEL)).toBe(theirs);
		const merged = [{ path: LABEL, text: clash.merged, base: clash.theirBase, typed: true }];
		expect((await desk.save({ changes: merged, by, what })).ok).toBe(true);
		expect(await read(LABEL)).toBe(both);
	});

	it('tells of a file that has come or gone, and of one clash among several files', async () => {
		const { desk, change, read, write } = await deskFolder();
		const made = { path: NEW, text: 'ours', base: null };
		const edited = await change(OTHER, label('Two'));
		await desk.save({ changes: [{ ...made, text: 'theirs' }], by, what });
		const saved = await desk.save({ changes: [edited, made], by, what });
		expect(saved).toMatchObject({
			problem: {
				code: 'changed-underneath',
				clashes: [{ path: NEW, started: null, theirs: 'theirs', merged: null }],
			},
		});
		expect(await read(OTHER)).toBe(label('Second tooth'));
		const gone = await change(LABEL, label('One'));
		await desk.save({ changes: [await change(LABEL, null), await change(FACTS, null)], by, what });
		expect(await desk.save({ changes: [gone], by, what, evenIfBroken: true })).toMatchObject({
			problem: { code: 'changed-underneath', clashes: [{ path: LABEL, theirs: null, theirBase: null }] },
		});
		await write('README.md', 'x');
	});

	it('notices who comes between the last look and the writing', async () => {
		let meddle = async (): Promise<void> => undefined;
		const folder = await deskFolder({ at: (point) => (point === 'kept' ? meddle() : undefined) });
		meddle = () => appendFile(join(folder.contentDir, LABEL), 'Theirs.\n');
		const saved = await folder.desk.save({ changes: [await folder.change(LABEL, label('One'))], by, what });
		expect(saved).toMatchObject({ ok: false, problem: { code: 'changed-underneath' } });
		expect(await folder.read(LABEL)).toBe(`${label('First tooth')}Theirs.\n`);
		expect(await folder.hidden()).toEqual([]);
	});
});

describe('uploaded files', () => {
	it('takes a scan with a new specimen in one save, and refuses it under another name', async () => {
		const { desk, contentDir, dataDir, read } = await deskFolder();
		const upload = join(dataDir, 'upload.bin');
		await writeFile(upload, Buffer.from([0, 1, 2, 255]));
		const facts = (await read(FACTS)).replace('SKM a', 'SKM c');
		const texts = [
			{ path: 'specimens/c/specimen.yaml', text: facts, base: null },
			{ path: 'specimens/c/label.en.md', text: label('Third'), base: null },
		];
		const scan = { path: 'specimens/c/scan.stl', from: upload, base: null };
		const saved = await desk.save({ changes: [...texts, scan], by, what });
		expect(saved.ok).toBe(true);
		expect([...(await readFile(join(contentDir, 'specimens/c/scan.stl')))]).toEqual([0, 1, 2, 255]);
		for (const path of ['specimens/c/specimen.yaml', 'scan.stl', 'specimens/c/scan.exe']) {
			const refused = await desk.save({ changes: [{ path, from: upload, base: null }], by, what });
			expect(refused).toMatchObject({ problem: { code: 'refused', path, why: 'not-allowed' } });
		}
		if (!saved.ok) return;
		const undone = { versionId: saved.value.version!, side: 'before' as const, what: { code: 'undone' } };
		expect((await desk.restore(undone)).ok).toBe(true);
		expect(await readdir(join(contentDir, 'specimens'))).toEqual(['a', 'b']);
		expect((await desk.restore({ ...undone, side: 'after' })).ok).toBe(true);
		expect([...(await readFile(join(contentDir, 'specimens/c/scan.stl')))]).toEqual([0, 1, 2, 255]);
	});
});
