import { rm, symlink, utimes } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fsReader, isLeftBehind, pathInside } from '../../../src/lib/server/fsReader';
import { put, scratchFolder } from './samples';

describe('fsReader', () => {
	it('lists files in all folders with forward slashes, sorted, with their size', async () => {
		const folder = await scratchFolder();
		await put(folder, 'exhibit.yaml', 'museum: A');
		await put(folder, 'specimens/b/label.en.md', 'é');
		await put(folder, 'specimens/a/specimen.yaml', '');
		const list = await fsReader(folder).list();
		expect(list.map(({ path, size }) => [path, size])).toEqual([
			['exhibit.yaml', 9],
			['specimens/a/specimen.yaml', 0],
			['specimens/b/label.en.md', 2],
		]);
	});

	it('passes over what editors and systems leave behind', async () => {
		const folder = await scratchFolder();
		const leavings = [
			'.hidden',
			'.git/config',
			'label.en.md~',
			'#label.en.md#',
			'.label.en.md.swp',
			'label.en.md.tmp',
			'~$label.docx',
			'4913',
			'Thumbs.db',
			'__MACOSX/label.en.md',
			'scan.stl.part',
		];
		for (const name of leavings) await put(folder, name, 'x');
		await put(folder, 'label.en.md', 'x');
		expect((await fsReader(folder).list()).map(({ path }) => path)).toEqual(['label.en.md']);
		expect(isLeftBehind('temporal-bone.en.md')).toBe(false);
	});

	it('changes the stamp when a file of the same size is written later', async () => {
		const folder = await scratchFolder();
		await put(folder, 'a.md', 'one');
		const [before] = await fsReader(folder).list();
		await put(folder, 'a.md', 'two');
		await utimes(join(folder, 'a.md'), 1_000_000, 1_000_000);
		const [after] = await fsReader(folder).list();
		expect(after.size).toBe(before.size);
		expect(after.stamp).not.toBe(before.stamp);
	});

	it('follows links inside the folder, and none that lead out of it or round in a circle', async () => {
		const outside = await scratchFolder();
		await put(outside, 'secret.md', 'secret');
		const folder = await scratchFolder();
		await put(folder, 'specimens/a/label.en.md', 'a');
		await symlink(join(folder, 'specimens/a'), join(folder, 'specimens/b'));
		await symlink(join(outside, 'secret.md'), join(folder, 'secret.md'));
		await symlink(outside, join(folder, 'outside'));
		await symlink(folder, join(folder, 'round'));
		await symlink(join(folder, 'nowhere'), join(folder, 'broken'));
		expect((await fsReader(folder).list()).map(({ path }) => path)).toEqual([
			'specimens/a/label.en.md',
			'specimens/b/label.en.md',
		]);
		await expect(fsReader(folder).read('secret.md')).rejects.toThrow('leads out of the folder');
		await expect(fsReader(folder).read('../x')).rejects.toThrow();
	});

	it('takes a missing folder for an empty one', async () => {
		const folder = await scratchFolder();
		await rm(folder, { recursive: true });
		expect(await fsReader(folder).list()).toEqual([]);
	});

	it('reads text without a byte order mark, wrong bytes as U+FFFD', async () => {
		const folder = await scratchFolder();
		await put(folder, 'a.md', Uint8Array.from([0xef, 0xbb, 0xbf, 0x41]));
		await put(folder, 'b.md', Uint8Array.from([0x41, 0xe9, 0x42]));
		expect(await fsReader(folder).read('a.md')).toBe('A');
		expect(await fsReader(folder).read('b.md')).toBe('A\ufffdB');
	});
});

describe('pathInside', () => {
	it('gives the path of a file in the folder and refuses every way out', async () => {
		const folder = await scratchFolder();
		await put(folder, 'in/scan.stl', 'x');
		await put(folder, 'other.stl', 'x');
		const inside = join(folder, 'in');
		await expect(pathInside(inside, 'scan.stl')).resolves.toMatch(/in\/scan\.stl$/);
		for (const way of ['../other.stl', join(folder, 'other.stl'), 'x/../../other.stl']) {
			await expect(pathInside(inside, way)).rejects.toThrow();
		}
	});
});
