import { appendFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { watchContent } from '../../../src/lib/server/watchContent';
import { quiet } from './contentFolder';
import { put, scratchFolder } from './samples';

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

async function watched(folder: string, polling: boolean): Promise<{ calls: number[] }> {
	const calls: number[] = [];
	const stop = watchContent(folder, () => void calls.push(performance.now()), { polling, logger: quiet });
	onTestFinished(stop);
	await pause(500);
	calls.length = 0;
	return { calls };
}

async function until(condition: () => boolean): Promise<void> {
	for (let waited = 0; !condition(); waited += 20) {
		if (waited > 8_000) throw new Error('until: it did not come about within 8 s');
		await pause(20);
	}
}

describe.each([
	['events', false],
	['polling', true],
])('watchContent by %s', (_name, polling) => {
	it('calls once for several files saved together, and again for the next', async () => {
		const folder = await scratchFolder();
		await put(folder, 'a.md', '1');
		const { calls } = await watched(folder, polling);
		await Promise.all([put(folder, 'a.md', '22'), put(folder, 'new/b.md', '1')]);
		await until(() => calls.length > 0);
		await pause(500);
		const after = calls.length;
		// a poller may see the two files in two rounds
		expect(after).toBeLessThanOrEqual(polling ? 2 : 1);
		await put(folder, 'new/b.md', '333');
		await until(() => calls.length > after);
	});
});

describe('watchContent', () => {
	it('is not called for what editors leave behind', async () => {
		const folder = await scratchFolder();
		await put(folder, 'a.md', '1');
		const { calls } = await watched(folder, false);
		await put(folder, '.a.md.swp', 'x');
		await put(folder, 'a.md~', 'x');
		await pause(400);
		expect(calls).toEqual([]);
	});

	it('waits for a big file to stop growing', async () => {
		const folder = await scratchFolder();
		const { calls } = await watched(folder, false);
		const path = join(folder, 'scan.stl');
		let lastWrite = 0;
		for (let i = 0; i < 6; i++) {
			await appendFile(path, new Uint8Array(1_500_000));
			lastWrite = performance.now();
			await pause(120);
		}
		await until(() => calls.length > 0);
		expect(calls[0]).toBeGreaterThan(lastWrite);
	});

	it('finds a folder that comes after it began', async () => {
		const folder = join(await scratchFolder(), 'later');
		const { calls } = await watched(folder, false);
		await put(folder, 'a.md', '1');
		await until(() => calls.length > 0);
		await pause(1_500);
		const before = calls.length;
		await put(folder, 'a.md', '22');
		await until(() => calls.length > before);
	});
});
