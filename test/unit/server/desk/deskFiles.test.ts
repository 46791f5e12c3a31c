import { chmod, mkdir, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { label } from '../contentFolder';
import { scratchFolder } from '../samples';
import { deskFolder, FACTS, hash, LABEL } from './deskFolder';

const what = { code: 'edited' };
const by = 'desk' as const;

describe('deskFiles: open and save', () => {
	it('lists text files only, opens one, and saves it with a version', async () => {
		const { desk, read, change, hidden, contentDir } = await deskFolder();
		await writeFile(join(contentDir, 'specimens/a/scan.stl'), 'solid');
		await mkdir(join(contentDir, '.schemas'));
		await writeFile(join(contentDir, '.schemas/x.md'), 'hidden');
		const listed = (await desk.list()).map(({ path }) => path);
		expect(listed).toContain(LABEL);
		expect(listed.filter((path) => !/\.(yaml|md)$/.test(path) || path.includes('.schemas'))).toEqual([]);

		const opened = await desk.open(LABEL);
		expect(opened).toEqual({
			ok: true,
			value: {
				path: LABEL,
				text: label('First tooth'),
				exact: label('First tooth'),
				base: hash(label('First tooth')),
				eol: '\n',
				bom: false,
			},
		});
		const saved = await desk.save({ changes: [await change(LABEL, label('Oldest tooth'))], by, what });
		expect(saved).toMatchObject({
			ok: true,
			value: { files: [{ path: LABEL, base: hash(label('Oldest tooth')) }] },
		});
		expect(await read(LABEL)).toBe(label('Oldest tooth'));
		expect(await hidden()).toEqual(['.schemas', '.schemas/x.md']);
		expect(await desk.versions(LABEL)).toMatchObject([
			{
				by,
				what,
				time: '2026-12-01T12:00:00.000Z',
				files: [
					{ path: LABEL, before: hash(label('First tooth')), after: hash(label('Oldest tooth')), kept: true },
				],
				problems: { errors: 0 },
			},
		]);
	});

	it('writes nothing and keeps no version where nothing is different', async () => {
		const { desk, read, change } = await deskFolder();
		const saved = await desk.save({ changes: [await change(LABEL, await read(LABEL))], by, what });
		expect(saved).toMatchObject({ ok: true, value: { version: null } });
		expect(await desk.versions()).toEqual([]);
	});

	it('keeps byte order mark and CRLF of a file that was typed in a page', async () => {
		const { desk, write, read } = await deskFolder();
		await write(LABEL, `\uFEFF${label('First tooth').replace(/\n/g, '\r\n')}`);
		const opened = await desk.open(LABEL);
		if (!opened.ok) throw new Error(opened.problem.code);
		expect(opened.value).toMatchObject({ text: label('First tooth'), eol: '\r\n', bom: true });
		const text = opened.value.text.replace('First', 'Second').replace('shore.', 'shore.\nAt low tide.');
		const saved = await desk.save({
			changes: [{ path: LABEL, text, base: opened.value.base, typed: true }],
			by,
			what,
		});
		expect(saved.ok).toBe(true);
		expect(await read(LABEL)).toBe(`\uFEFF${text.replace(/\n/g, '\r\n')}`);
	});

	it('keeps who may read a file', async () => {
		const { desk, change, contentDir } = await deskFolder();
		await chmod(join(contentDir, LABEL), 0o640);
		await desk.save({ changes: [await change(LABEL, label('New'))], by, what });
		expect((await stat(join(contentDir, LABEL))).mode & 0o777).toBe(0o640);
	});

	it('makes and takes away whole specimens, folder and all, and brings them back', async () => {
		const { desk, read, change, contentDir } = await deskFolder();
		const facts = (await read(FACTS)).replace('SKM a', 'SKM c');
		const made = await desk.save({
			changes: [
				{ path: 'specimens/c/specimen.yaml', text: facts, base: null },
				{ path: 'specimens/c/label.en.md', text: label('Third'), base: null },
			],
			by,
			what: { code: 'added', data: { id: 'c' } },
		});
		expect(made.ok).toBe(true);
		const gone = await desk.save({
			changes: [await change(FACTS, null), await change(LABEL, null)],
			by,
			what: { code: 'removed', data: { id: 'a' } },
		});
		if (!gone.ok) throw new Error(gone.problem.code);
		expect((await readdir(join(contentDir, 'specimens'))).sort()).toEqual(['b', 'c']);
		const back = await desk.restore({
			versionId: gone.value.version!,
			side: 'before',
			what: { code: 'undone' },
		});
		expect(back.ok).toBe(true);
		expect(await read(LABEL)).toBe(label('First tooth'));
		// and undo of the undo
		if (!back.ok) return;
		await desk.restore({ versionId: back.value.version!, side: 'before', what: { code: 'undone' } });
		expect((await readdir(join(contentDir, 'specimens'))).sort()).toEqual(['b', 'c']);
	});

	it('refuses what would be an error, tells of it, and saves it when asked to', async () => {
		const { desk, read, change } = await deskFolder();
		const broken = (await read(FACTS)).replace('part: crown', 'part: crwon');
		const changes = [await change(FACTS, broken)];
		const refused = await desk.save({ changes, by, what });
		expect(refused).toMatchObject({
			ok: false,
			problem: { code: 'has-errors', fresh: [{ severity: 'error', file: FACTS, path: 'part' }] },
		});
		expect(await read(FACTS)).not.toBe(broken);
		expect((await desk.save({ changes, by, what, evenIfBroken: true })).ok).toBe(true);
		expect(await read(FACTS)).toBe(broken);
		expect(await desk.versions()).toMatchObject([{ problems: { errors: 1 } }]);
		// what is broken already may be changed elsewhere
		const other = [await change(FACTS, broken.replace('honey', 'tan'))];
		expect((await desk.save({ changes: other, by, what })).ok).toBe(true);
	});

	it('refuses a change that breaks another file', async () => {
		const { desk, change } = await deskFolder();
		const changes = [
			await change('groups/mosasaurus.yaml', null),
			await change('groups/mosasaurus.en.md', null),
		];
		const refused = await desk.save({ changes, by, what });
		if (refused.ok || refused.problem.code !== 'has-errors') throw new Error('not refused');
		expect(refused.problem.fresh.map(({ file }) => file)).toContain(FACTS);
	});

	it('does not open what is no text, too long or not there', async () => {
		const { desk, contentDir } = await deskFolder();
		await writeFile(join(contentDir, LABEL), Buffer.from([0x65, 0xe9]));
		await writeFile(join(contentDir, FACTS), 'x'.repeat(1_000_001));
		const code = async (path: string) => {
			const opened = await desk.open(path);
			return opened.ok ? 'ok' : opened.problem.code;
		};
		expect(await code(LABEL)).toBe('not-text');
		expect(await code(FACTS)).toBe('too-large');
		expect(await code('specimens/z/specimen.yaml')).toBe('no-such-file');
		expect(await code('specimens/a')).toBe('not-allowed');
	});

	it('says that the folder is gone, and works again when it is back', async () => {
		const { desk, contentDir, change } = await deskFolder();
		const changes = [await change(LABEL, label('New'))];
		const away = join(await scratchFolder(), 'away');
		await rename(contentDir, away);
		expect(await desk.list()).toEqual([]);
		expect(await desk.open(LABEL)).toEqual({ ok: false, problem: { code: 'folder-gone', path: LABEL } });
		expect(await desk.save({ changes, by, what })).toEqual({
			ok: false,
			problem: { code: 'refused', path: LABEL, why: 'folder-gone' },
		});
		await desk.notice();
		expect(await desk.versions()).toEqual([]);
		await rename(away, contentDir);
		expect((await desk.save({ changes, by, what })).ok).toBe(true);
		await rm(contentDir, { recursive: true });
	});
});
