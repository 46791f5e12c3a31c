import { readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { applyImport } from '../../../../src/lib/server/table/applyImport';
import { specimenFiles } from '../../../../src/lib/server/table/specimenFiles';
import { readExactly } from '../../../../src/lib/server/table/specimenFiles';
import { fsReader } from '../../../../src/lib/server/fsReader';
import { put, scratchFolder } from '../samples';
import { deskOn } from '../desk/deskFolder';

const PATH = 'specimens/a/specimen.yaml';
const NEW = 'specimens/b/specimen.yaml';

describe('applyImport', () => {
	it('writes what was planned, makes new folders, and leaves no other file behind', async () => {
		const folder = await scratchFolder();
		await put(folder, PATH, 'old');
		const desk = await deskOn(folder);
		expect(
			await applyImport(desk, [
				{ path: PATH, before: 'old', after: 'new' },
				{ path: NEW, before: null, after: 'first' },
			]),
		).toEqual({ ok: true, value: { written: 2 } });
		expect(await readFile(join(folder, PATH), 'utf8')).toBe('new');
		expect(await readFile(join(folder, NEW), 'utf8')).toBe('first');
		expect(await readdir(join(folder, 'specimens/a'))).toEqual(['specimen.yaml']);
		const versions = await desk.versions();
		expect(versions).toMatchObject([{ by: 'spreadsheet', what: { code: 'imported', data: { files: 2 } } }]);
		const undone = { versionId: versions[0].id, side: 'before' as const, what: { code: 'undone' } };
		expect((await desk.restore({ ...undone, evenIfBroken: true })).ok).toBe(true);
		expect(await readFile(join(folder, PATH), 'utf8')).toBe('old');
	});

	it('writes nothing where one of the files has been changed, has gone or has come', async () => {
		const folder = await scratchFolder();
		await put(folder, PATH, 'old');
		await put(folder, 'specimens/c/specimen.yaml', 'edited since');
		const stale = { ok: false, problem: { code: 'changed-meanwhile', written: 0 } };
		const edit = { path: PATH, before: 'old', after: 'new' };
		for (const other of [
			{ path: 'specimens/c/specimen.yaml', before: 'as it was', after: 'x' },
			{ path: 'specimens/c/specimen.yaml', before: null, after: 'x' },
			{ path: 'specimens/gone/specimen.yaml', before: 'as it was', after: 'x' },
		])
			expect(await applyImport(await deskOn(folder), [edit, other])).toEqual(stale);
		expect(await readFile(join(folder, PATH), 'utf8')).toBe('old');
	});

	it('does not follow a link out of the folder', async () => {
		const folder = await scratchFolder();
		const outside = await scratchFolder();
		await put(folder, PATH, 'old');
		await symlink(outside, join(folder, 'specimens/b'));
		expect(await applyImport(await deskOn(folder), [{ path: NEW, before: null, after: 'x' }])).toEqual({
			ok: false,
			problem: { code: 'not-written', written: 0 },
		});
		expect(await readdir(outside)).toEqual([]);
		await rm(join(folder, 'specimens/b'));
	});
});

describe('specimenFiles', () => {
	it('reads what is there, and leaves alone what cannot be read as it is', async () => {
		const folder = await scratchFolder();
		await put(folder, PATH, '\uFEFFaccession: A\n');
		await put(folder, 'specimens/a/label.en.md', 'words');
		await put(folder, NEW, 'accession: B\n');
		await writeFile(join(folder, 'specimens/b/label.fr.md'), Buffer.from([0x65, 0xe9]));
		const found = await specimenFiles(fsReader(folder), (path) => readExactly(folder, path));
		expect(found).toEqual({
			specimens: [{ id: 'a', facts: '\uFEFFaccession: A\n', labels: new Map([['en', 'words']]) }],
			unreadable: new Set(['b']),
		});
	});
});
