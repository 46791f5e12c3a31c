import { mkdtempSync, readFileSync, rmSync, writeFileSync, existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createScreenFiles, screenNote } from '../../../../src/lib/server/screens/screenFiles';
import type { ScreenReport } from '../../../../src/lib/server/screens/screenRegistry';
import { beat } from './beat';

const report = (over: Partial<ScreenReport> = {}): ScreenReport => ({
	key: 'wall',
	name: 'wall',
	health: 'well',
	age_s: 12,
	reachable: true,
	hangs: 0,
	twice: false,
	restarting: false,
	beat: beat(),
	...over,
});

let folder: string;
beforeEach(() => void (folder = mkdtempSync(path.join(tmpdir(), 'screens-'))));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('screenFiles', () => {
	it('says when a screen last beat, and that a hung one needs its browser started anew', () => {
		const now_ms = Date.parse('2026-03-29T01:30:12Z');
		expect(screenNote(report(), now_ms)).toEqual({
			name: 'wall',
			health: 'well',
			restart_browser: false,
			last_beat: '2026-03-29T01:30:00.000Z',
			page: 'a'.repeat(16),
			uptime_s: 120,
		});
		expect(screenNote(report({ health: 'hung' }), now_ms).restart_browser).toBe(true);
		expect(screenNote(report({ health: 'late' }), now_ms).restart_browser).toBe(false);
	});

	it('keeps one file a screen, the newest word last, and takes it away', async () => {
		const files = createScreenFiles(folder, (cause) => expect.fail(String(cause)));
		const file = path.join(folder, 'screens', 'wall.json');
		await Promise.all([files.write(report()), files.write(report({ health: 'hung' }))]);
		expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({ health: 'hung', restart_browser: true });
		await files.write(report({ name: null, key: 'a'.repeat(16) }));
		await files.remove(report());
		expect(existsSync(file)).toBe(false);
	});

	it('goes on where nothing can be written', async () => {
		writeFileSync(path.join(folder, 'screens'), 'a file where a folder should be');
		const causes: unknown[] = [];
		const files = createScreenFiles(folder, (cause) => causes.push(cause));
		await files.write(report());
		await files.write(report());
		expect(causes).toHaveLength(2);
	});
});
