import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { ScreenReport } from '../../../../src/lib/server/screens/screenRegistry';
import { screenRows } from '../../../../src/lib/server/status/screenRows';
import { serverHealth } from '../../../../src/lib/server/status/serverHealth';
import { beat } from '../screens/beat';
import { exhibit } from '../samples';

const HASH = '0123456789abcdef';
const report = (over: Partial<ScreenReport> = {}): ScreenReport => ({
	key: over.name ?? 'wall',
	name: 'wall',
	health: 'well',
	age_s: 12,
	reachable: true,
	hangs: 0,
	twice: false,
	restarting: false,
	beat: beat({ exhibit: HASH }),
	...over,
});

describe('screenRows', () => {
	const house = {
		hash: HASH,
		screens: [
			{ id: 'wall', title: 'Wall' },
			{ id: 'table', title: 'Table' },
		],
	};

	it('shows what needs somebody first, and screens that nobody has seen last', () => {
		const rows = screenRows(
			house,
			[report(), report({ name: 'attic' }), report({ name: 'cellar', health: 'hung' })],
			'1',
		);
		expect(rows.map(({ key, health, title, unknown }) => [key, health, title, unknown])).toEqual([
			['cellar', 'hung', null, true],
			['attic', 'well', null, true],
			['wall', 'well', 'Wall', false],
			['table', 'never', 'Table', false],
		]);
	});

	it('tells of a screen that shows something else, or runs another program', () => {
		const [row] = screenRows(house, [report({ beat: beat({ exhibit: 'f'.repeat(16), version: '0' }) })], '1');
		expect([row.otherContent, row.otherVersion]).toEqual([true, true]);
		const [same] = screenRows(house, [report()], '1');
		expect([same.otherContent, same.otherVersion]).toEqual([false, false]);
		const [nameless] = screenRows(null, [report({ name: null, key: 'a'.repeat(16) })], '1');
		expect([nameless.unknown, nameless.otherContent]).toEqual([false, false]);
	});
});

describe('serverHealth', () => {
	it('tells numbers and no names', async () => {
		const folder = mkdtempSync(path.join(tmpdir(), 'health-'));
		writeFileSync(path.join(folder, 'snapshot.json'), '{}');
		const preparing = { done: 0, total: 0, current: [], remaining_s: null };
		const store = { current: () => exhibit(), problems: () => [], preparing: () => preparing };
		const about = { version: '7', dataDir: folder, contentDir: path.join(folder, 'gone'), uptime_s: 3 };
		const screens = [report(), report({ name: 'table', health: 'hung' })];
		const health = await serverHealth(
			store,
			{ list: () => screens },
			{ file: { lost: 2, trouble: 'full' } },
			about,
		);
		rmSync(folder, { recursive: true });
		expect(Object.keys(health).sort()).toEqual([
			'content_changed',
			'disk',
			'event_loop_ms',
			'exhibit',
			'log',
			'memory',
			'node',
			'ok',
			'preparing',
			'problems',
			'screens',
			'specimens',
			'uptime_s',
			'version',
		]);
		expect(health.screens).toEqual({ well: 1, late: 0, hung: 1, closed: 0 });
		expect(health.log).toEqual({ lost: 2 });
		expect(health.disk.data_free_MB).toBeGreaterThan(0);
		expect(health.disk.content_free_MB).toBeNull();
		expect(Date.now() - Date.parse(health.content_changed!)).toBeLessThan(60_000);
		expect(JSON.stringify(health)).not.toMatch(/wall|table/);
	});
});
