import { createHash } from 'node:crypto';
import { mkdir, mkdtemp, readdir, readFile, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readExportList } from '../../../../src/lib/kiosk/offline/exportList';
import { writeExport } from '../../../../src/lib/server/export/writeExport';

let room = '';
let out = '';
beforeEach(async () => {
	room = await mkdtemp(join(tmpdir(), 'write-export-'));
	out = join(room, 'site', 'teeth');
});
afterEach(() => rm(room, { recursive: true, force: true }));

const write = (all: Record<string, string>) =>
	writeExport(out, {
		files: new Map(Object.entries(all).map(([path, text]) => [path, new TextEncoder().encode(text)])),
		exhibit: 'exhibit',
		code: 'code',
	});
const listed = async () => readExportList(await readFile(join(out, 'export.json'), 'utf8'));

describe('writeExport', () => {
	it('writes every file and a list with their hashes', async () => {
		const done = await write({ 'index.html': 'start', 'fr/index.html': 'début' });
		expect(done).toMatchObject({ ok: true, value: { bytes: 11, changed: 2, gone: 0 } });
		const list = await listed();
		expect(list).toMatchObject({ exhibit: 'exhibit', code: 'code' });
		expect(list?.files.map(({ path }) => path)).toEqual(['fr/index.html', 'index.html']);
		for (const { path, sha256, bytes } of list?.files ?? []) {
			const data = await readFile(join(out, path));
			expect(createHash('sha256').update(data).digest('hex')).toBe(sha256);
			expect(data.length).toBe(bytes);
		}
		expect((await stat(out)).mode & 0o777).toBe(0o755);
	});

	it('is the same for the same files, and leaves nothing else behind', async () => {
		await write({ 'a/index.html': 'a', 'b.js': 'b' });
		const before = await readFile(join(out, 'export.json'), 'utf8');
		const date = new Date('2020-01-01');
		await utimes(join(out, 'b.js'), date, date);
		const done = await write({ 'b.js': 'b', 'a/index.html': 'a' });
		expect(done).toMatchObject({ ok: true, value: { changed: 0, gone: 0 } });
		expect(await readFile(join(out, 'export.json'), 'utf8')).toBe(before);
		expect((await stat(join(out, 'b.js'))).mtime).toEqual(date);
		const other = await write({ 'b.js': 'c' });
		expect(other).toMatchObject({ ok: true, value: { changed: 1, gone: 1 } });
		expect((await readdir(out)).sort()).toEqual(['b.js', 'export.json']);
		expect(await readdir(join(room, 'site'))).toEqual(['teeth']);
	});

	it('takes an empty folder, and no other', async () => {
		await mkdir(out, { recursive: true });
		expect((await write({ 'index.html': '1' })).ok).toBe(true);
		await writeFile(join(out, 'export.json'), '{"kind":"something else"}');
		const refused = await write({ 'index.html': '2' });
		expect(refused).toMatchObject({ ok: false });
		expect(await readFile(join(out, 'index.html'), 'utf8')).toBe('1');
		await rm(out, { recursive: true });
		await writeFile(out, 'a file');
		expect((await write({ 'index.html': '3' })).ok).toBe(false);
		expect(await readFile(out, 'utf8')).toBe('a file');
	});

	it('leaves the earlier export as it was when writing fails', async () => {
		await write({ 'index.html': 'good' });
		// a file cannot be a folder at the same time
		await expect(write({ a: '1', 'a/b': '2' })).rejects.toThrow();
		expect(await readFile(join(out, 'index.html'), 'utf8')).toBe('good');
		expect(await readdir(join(room, 'site'))).toEqual(['teeth']);
	});
});
