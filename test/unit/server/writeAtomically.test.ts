import { mkdir, readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeAtomically } from '../../../src/lib/server/writeAtomically';
import { put, scratchFolder } from './samples';

describe('writeAtomically', () => {
	it('makes the folder, writes the file and leaves nothing else', async () => {
		const folder = await scratchFolder();
		await writeAtomically(join(folder, 'deep/er/a.json'), '1');
		await writeAtomically(join(folder, 'deep/er/a.json'), '2');
		expect(await readFile(join(folder, 'deep/er/a.json'), 'utf8')).toBe('2');
		expect(await readdir(join(folder, 'deep/er'))).toEqual(['a.json']);
	});

	it('keeps the old version when the new one cannot be put in its place', async () => {
		const folder = await scratchFolder();
		// a folder of that name cannot be replaced by a file
		await mkdir(join(folder, 'a.json'));
		await put(folder, 'a.json/old', 'old');
		await expect(writeAtomically(join(folder, 'a.json'), 'new')).rejects.toThrow();
		expect(await readdir(folder)).toEqual(['a.json']);
		expect(await readFile(join(folder, 'a.json/old'), 'utf8')).toBe('old');
	});

	it('never shows a reader half of a file while many are written', async () => {
		const folder = await scratchFolder();
		const path = join(folder, 'a.json');
		const versions = [1, 2, 3, 4, 5, 6, 7, 8].map((n) => String(n).repeat(200_000));
		await writeAtomically(path, versions[0]);
		let writing = true;
		const all = Promise.all(versions.map((text) => writeAtomically(path, text))).then(() => {
			writing = false;
		});
		let reads = 0;
		while (writing || reads === 0) {
			expect(versions).toContain(await readFile(path, 'utf8'));
			reads++;
		}
		await all;
	});
});
