import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { openCounts } from '../../../src/lib/server/counts/getCounts';
import { sqliteCounts } from '../../../src/lib/server/counts/sqliteCounts';
import { storeTests } from './store';

const folder = mkdtempSync(path.join(tmpdir(), 'counts-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
let made = 0;
const fresh = () => path.join(folder, `${(made += 1)}`, 'counts.db');
const silent = { info: () => undefined, warn: () => undefined };

describe('sqliteCounts', () => {
	storeTests(async () => sqliteCounts(fresh()));

	it('keeps what it confirmed when the process is killed in the middle', async () => {
		for (let run = 0; run < 3; run += 1) {
			const file = fresh();
			const child = spawn(
				process.execPath,
				['--import', 'tsx', path.resolve('test/unit/counts/addUntilKilled.ts'), file],
				{ stdio: ['ignore', 'pipe', 'inherit'] },
			);
			let confirmed = 0;
			let text = '';
			child.stdout.on('data', (chunk: Buffer) => {
				text += chunk.toString();
				confirmed = text.split('\n').filter((line) => line === 'kept').length;
				if (confirmed >= 20 + run * 7) child.kill('SIGKILL');
			});
			await new Promise((resolve) => child.on('close', resolve));
			confirmed = text.split('\n').filter((line) => line === 'kept').length;
			const store = sqliteCounts(file);
			const [tally] = await store.tallies('quiz-answer');
			await store.close();
			expect(confirmed).toBeGreaterThanOrEqual(20);
			// one more may have been written and not told of; three entries a batch, all or none
			expect(tally.count % 3).toBe(0);
			expect(tally.count / 3).toBeGreaterThanOrEqual(confirmed);
			expect(tally.count / 3).toBeLessThanOrEqual(confirmed + 1);
		}
	}, 60_000);

	it('a file that cannot be read is laid aside and new counts begin', async () => {
		const file = fresh();
		await sqliteCounts(file).close();
		// the log would mend the file
		for (const end of ['-wal', '-shm']) rmSync(file + end, { force: true });
		writeFileSync(file, 'this is no database, but long enough to be taken for one'.repeat(40));
		const warnings: string[] = [];
		const store = openCounts({ file }, { ...silent, warn: (message) => warnings.push(message) });
		expect(warnings.join()).toMatch(/cannot be read/);
		expect(await store!.tallies('quiz-answer')).toEqual([]);
		await store!.close();
		const aside = readdirSync(path.dirname(file)).find((name) => name.includes('unreadable'))!;
		expect(readFileSync(path.join(path.dirname(file), aside), 'utf8')).toMatch(/no database/);
	});

	it('where nothing can be written there are no counts, and the exhibit goes on', () => {
		const blocked = path.join(folder, 'a-file');
		writeFileSync(blocked, '');
		const warnings: string[] = [];
		expect(
			openCounts({ file: path.join(blocked, 'counts.db') }, { ...silent, warn: (m) => warnings.push(m) }),
		).toBeNull();
		expect(warnings.join()).toMatch(/not kept/);
	});
});
