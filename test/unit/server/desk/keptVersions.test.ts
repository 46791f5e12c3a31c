import { appendFile, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { OLDEST } from '../../../../src/lib/server/desk/keptVersions';
import { label } from '../contentFolder';
import { deskFolder, FACTS, LABEL, type Desk } from './deskFolder';

const what = { code: 'edited' };
const by = 'desk' as const;

const saveTitle = async ({ desk, change }: Desk, title: string) => {
	const saved = await desk.save({ changes: [await change(LABEL, label(title))], by, what });
	if (!saved.ok) throw new Error(saved.problem.code);
	return saved.value.version!;
};

async function keptBytes(dataDir: string): Promise<number> {
	const texts = join(dataDir, 'versions/texts');
	let sum = 0;
	for (const name of await readdir(texts, { recursive: true })) {
		const facts = await stat(join(texts, name));
		if (facts.isFile()) sum += facts.size;
	}
	return sum;
}

describe('kept versions', () => {
	it('keeps what a text editor changes, made and took away', async () => {
		const folder = await deskFolder();
		const { desk, write, contentDir } = folder;
		await desk.notice();
		const [first] = await desk.versions();
		expect(first).toMatchObject({ by: 'outside', what: { code: OLDEST }, problems: { errors: 0 } });
		expect(first.files.map(({ path }) => path)).toContain(FACTS);
		await desk.notice();
		expect(await desk.versions()).toHaveLength(1);
		await saveTitle(folder, 'By the desk');
		await desk.notice();
		expect(await desk.versions()).toHaveLength(2);

		await write(LABEL, label('By an editor'));
		await write('beds/chalk.yaml', 'oldest_ma: 1\n');
		await rm(join(contentDir, 'specimens/b/label.en.md'));
		await desk.notice();
		const [outside] = await desk.versions();
		expect(outside).toMatchObject({ by: 'outside', what: { code: 'outside' } });
		expect(outside.files.map(({ path, before, after }) => [path, before === null, after === null])).toEqual([
			['beds/chalk.yaml', true, false],
			[LABEL, false, false],
			['specimens/b/label.en.md', false, true],
		]);
		expect(outside.problems.errors).toBeGreaterThan(0);
		expect(await desk.readVersion(outside.id, LABEL, 'before')).toEqual({
			ok: true,
			value: label('By the desk'),
		});
		expect(await desk.readVersion(outside.id, LABEL)).toEqual({ ok: true, value: label('By an editor') });
		expect(await desk.readVersion(outside.id, 'beds/chalk.yaml', 'before')).toEqual({
			ok: true,
			value: null,
		});
		// what the editor did can be undone as well
		const undone = { versionId: outside.id, side: 'before' as const, what: { code: 'undone' } };
		expect((await desk.restore(undone)).ok).toBe(true);
		expect(await folder.read(LABEL)).toBe(label('By the desk'));
		expect(await folder.read('specimens/b/label.en.md')).toBe(label('Second tooth'));
	});

	it('brings the whole folder back to what it was, and forward again', async () => {
		const folder = await deskFolder();
		const { desk } = folder;
		await desk.notice();
		const one = await saveTitle(folder, 'One');
		await folder.write('README.md', 'new');
		await desk.notice();
		await desk.save({ changes: [await folder.change('README.md', null)], by, what });
		const last = await saveTitle(folder, 'Two');
		const back = await desk.restore({
			versionId: one,
			scope: 'folder',
			side: 'before',
			what: { code: 'back' },
		});
		expect(back.ok).toBe(true);
		expect(await folder.read(LABEL)).toBe(label('First tooth'));
		const forth = await desk.restore({ versionId: last, scope: 'folder', what: { code: 'forth' } });
		expect(forth.ok).toBe(true);
		expect(await folder.read(LABEL)).toBe(label('Two'));
	});

	it('restores one file, not over what has been changed since it was looked at', async () => {
		const folder = await deskFolder();
		const { desk } = folder;
		const one = await saveTitle(folder, 'One');
		const two = await desk.open(LABEL);
		if (!two.ok) throw new Error(two.problem.code);
		await saveTitle(folder, 'Three');
		const asked = { versionId: one, path: LABEL, side: 'before' as const, what: { code: 'undone' } };
		const clash = await desk.restore({ ...asked, base: two.value.base });
		expect(clash).toMatchObject({ ok: false, problem: { code: 'changed-underneath' } });
		expect(await folder.read(LABEL)).toBe(label('Three'));
		expect((await desk.restore(asked)).ok).toBe(true);
		expect(await folder.read(LABEL)).toBe(label('First tooth'));
		expect(await desk.restore({ ...asked, path: FACTS })).toMatchObject({
			problem: { code: 'refused', why: 'no-such-version' },
		});
	});

	it('holds its bounds: the oldest go, what they left can still be brought back', async () => {
		const limits = { versions: 20, bytes: 1e6, dataBytes: 1_000 };
		const folder = await deskFolder({ limits });
		await folder.desk.notice();
		for (let i = 1; i <= 45; i++) await saveTitle(folder, `Title ${i}`);
		const versions = await folder.desk.versions();
		expect(versions.length).toBeLessThanOrEqual(20);
		const oldest = versions.at(-1)!;
		expect(oldest.what.code).toBe(OLDEST);
		expect(oldest.files.map(({ path }) => path)).toContain(FACTS);
		const asked = { versionId: oldest.id, scope: 'folder' as const, what: { code: 'back' } };
		expect((await folder.desk.restore(asked)).ok).toBe(true);
		expect(await folder.read(LABEL)).toMatch(/title: Title \d+/);
		// the same after a new start
		expect((await folder.again({ limits }).versions()).length).toBeLessThanOrEqual(20);
	});

	it('holds its bound of bytes', async () => {
		const limits = { versions: 5_000, bytes: 40_000, dataBytes: 1_000 };
		const folder = await deskFolder({ limits });
		for (let i = 0; i < 30; i++) {
			const text = label(`Title ${i}`) + 'word '.repeat(800);
			const saved = await folder.desk.save({ changes: [await folder.change(LABEL, text)], by, what });
			expect(saved.ok).toBe(true);
			expect(await keptBytes(folder.dataDir)).toBeLessThanOrEqual(40_000);
		}
		expect((await folder.desk.versions()).length).toBeGreaterThan(5);
	});

	it('only notes a scan that is too large to be kept', async () => {
		const folder = await deskFolder({ limits: { versions: 100, bytes: 1e6, dataBytes: 10 } });
		const upload = join(folder.dataDir, 'upload');
		await writeFile(upload, 'x'.repeat(11));
		const path = 'specimens/a/scan.stl';
		const saved = await folder.desk.save({ changes: [{ path, from: upload, base: null }], by, what });
		if (!saved.ok) throw new Error(saved.problem.code);
		const [version] = await folder.desk.versions(path);
		expect(version.files).toMatchObject([{ path, kept: false }]);
		await folder.desk.save({ changes: [await folder.change(path, null)], by, what });
		const back = await folder.desk.restore({ versionId: version.id, what: { code: 'back' } });
		expect(back).toEqual({ ok: false, problem: { code: 'refused', path, why: 'not-kept' } });
	});

	it('passes over a line that was torn off, and a text that is damaged', async () => {
		const folder = await deskFolder();
		const one = await saveTitle(folder, 'One');
		const list = join(folder.dataDir, 'versions/versions.jsonl');
		await appendFile(list, '{"id":"half');
		const desk = folder.again();
		expect(await desk.versions()).toHaveLength(1);
		await saveTitle({ ...folder, desk }, 'Two');
		expect((await folder.again().versions()).map(({ files }) => files.length)).toEqual([1, 1]);
		expect((await readFile(list, 'utf8')).split('\n')).toHaveLength(4);
		const [{ files }] = (await desk.versions()).filter(({ id }) => id === one);
		const text = join(folder.dataDir, 'versions/texts', files[0].before!.slice(0, 2), files[0].before!);
		await writeFile(text, 'damaged');
		expect(await desk.readVersion(one, LABEL, 'before')).toMatchObject({ problem: { code: 'not-kept' } });
	});

	it('finds versions of a file and of a folder', async () => {
		const folder = await deskFolder();
		await saveTitle(folder, 'One');
		const facts = (await folder.read(FACTS)).replace('honey', 'tan');
		await folder.desk.save({ changes: [await folder.change(FACTS, facts)], by, what });
		expect(await folder.desk.versions(LABEL)).toHaveLength(1);
		expect(await folder.desk.versions('specimens/a/')).toHaveLength(2);
		expect(await folder.desk.versions('specimens/b/')).toHaveLength(0);
	});
});
