import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { shapeFiles } from '../../../src/lib/server/shapeFiles';
import { readSnapshot, SNAPSHOT_VERSION, writeSnapshot } from '../../../src/lib/server/snapshotFile';
import { exhibit, hashOf, prepared, put, scratchFolder, specimen } from './samples';

async function withShape(name: string, dataDir: string): Promise<void> {
	const files = shapeFiles('', hashOf(name));
	await put(dataDir, files.glb, 'glTF');
	await put(dataDir, files.picture('honey'), 'RIFF');
	await put(dataDir, files.facts, JSON.stringify(prepared(hashOf(name))));
}

describe('snapshotFile', () => {
	it('gives back the exhibit that was kept', async () => {
		const data = await scratchFolder();
		await withShape('cone', data);
		await writeSnapshot(data, { exhibit: exhibit(), listing: 'x' });
		expect(await readSnapshot(data)).toEqual({ exhibit: exhibit(), listing: 'x' });
	});

	it('leaves out specimens whose prepared files are gone', async () => {
		const data = await scratchFolder();
		await withShape('cone', data);
		await withShape('other', data);
		await writeSnapshot(data, {
			exhibit: exhibit({
				specimens: [specimen('a'), specimen('b', { prepared: prepared(hashOf('other')) })],
			}),
			listing: 'x',
		});
		await rm(shapeFiles(data, hashOf('other')).picture('honey'));
		// its listing no longer speaks for it: the folder has to be read again
		expect(await readSnapshot(data)).toEqual({
			exhibit: exhibit({ specimens: [specimen('a')] }),
			listing: '',
		});
	});

	it('takes a damaged or changed file for none', async () => {
		const data = await scratchFolder();
		await withShape('cone', data);
		expect(await readSnapshot(data)).toBeNull();
		await writeSnapshot(data, { exhibit: exhibit(), listing: 'x' });
		const text = await readFile(join(data, 'snapshot.json'), 'utf8');
		for (const damaged of [
			text.slice(0, text.length / 2),
			'',
			'null',
			`{"version":"${SNAPSHOT_VERSION}"}`,
			text.replace('Skerrow', 'Skarrow'),
			text.replace(`"version":"${SNAPSHOT_VERSION}"`, '"version":"0.0"'),
		]) {
			await put(data, 'snapshot.json', damaged);
			expect(await readSnapshot(data)).toBeNull();
		}
	});

	it('is not led astray by the temporary file of a process that was killed before the rename', async () => {
		const data = await scratchFolder();
		await withShape('cone', data);
		await writeSnapshot(data, { exhibit: exhibit(), listing: 'x' });
		await put(
			data,
			'.snapshot.json.4711.00ff.tmp',
			`{"version":"${SNAPSHOT_VERSION}","exhibit":{"museum":"half`,
		);
		expect(await readSnapshot(data)).toEqual({ exhibit: exhibit(), listing: 'x' });
	});
});
