import { readdir, utimes } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { KEEP_UNUSED_MS, pruneShapes } from '../../../src/lib/server/pruneShapes';
import { hashOf, put, scratchFolder } from './samples';

describe('pruneShapes', () => {
	it('removes only shapes that are unused and old', async () => {
		const data = await scratchFolder();
		const now_ms = 2_000_000_000_000;
		const days = (n: number): Date => new Date(now_ms - n * 24 * 3_600_000);
		for (const [name, age] of [
			[hashOf('used'), 400],
			[hashOf('old'), 31],
			[hashOf('young'), 29],
			['notes', 400],
		] as const) {
			await put(data, `shapes/${name}/prepared.json`, '{}');
			await utimes(join(data, 'shapes', name), days(age), days(age));
		}
		expect(KEEP_UNUSED_MS).toBe(30 * 24 * 3_600_000);
		expect(await pruneShapes(data, new Set([hashOf('used')]), now_ms)).toBe(1);
		expect((await readdir(join(data, 'shapes'))).sort()).toEqual(
			[hashOf('used'), hashOf('young'), 'notes'].sort(),
		);
	});

	it('has nothing to do in an empty data folder', async () => {
		expect(await pruneShapes(await scratchFolder(), new Set(), 0)).toBe(0);
	});
});
