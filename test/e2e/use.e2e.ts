import path from 'node:path';
import type { Page } from '@playwright/test';
import Database from 'libsql';
import { DWELL_BUCKETS } from '../../src/lib/domain/use/dwell';
import { USE_ENDS, USE_ROOMS, USE_SETTINGS, USE_STEPS } from '../../src/lib/domain/use/useFacts';
import { sqliteCounts } from '../../src/lib/server/counts/sqliteCounts';
import { useReport } from '../../src/lib/server/counts/useReport';
import { AxeBuilder } from './axe';
import { asStaff, CONTENT, expect, ready, test } from './helpers';

const DB = path.resolve(CONTENT, '../data/counts.db');
const AT = '/use/counts';

/** What a page sends about its use, as it stands in the requests. */
function sendings(page: Page): string[] {
	const sent: string[] = [];
	page.on('request', (request) => {
		if (new URL(request.url()).pathname === AT) sent.push(request.postData() ?? '');
	});
	return sent;
}
interface Row {
	kind: string;
	day: string;
	facts: string;
	count: number;
}
function kept(): Row[] {
	const db = new Database(DB, { readonly: true });
	const rows = db.prepare("select * from tally where kind like 'use-%'").all() as Row[];
	db.close();
	return rows;
}
const stays = (room: string) =>
	kept()
		.filter(({ kind, facts }) => kind === 'use-room' && facts.includes(`["room","${room}"]`))
		.reduce((sum, { count }) => sum + count, 0);

test('a visit is counted room by room, and its end as the page goes; nothing about anybody', async ({
	page,
}) => {
	const sent = sendings(page);
	// what counts comes when the screen has nothing else to do
	const counter = page.waitForEvent('requestfinished', (request) => /UseCounter|\.js$/.test(request.url()));
	await page.goto('/?lang=en');
	await ready(page);
	await counter;
	await page.waitForLoadState('networkidle');
	await page.locator('a[href^="/compare"]').first().tap();
	await ready(page);
	await expect.poll(() => sent.length).toBe(1);
	await page.getByRole('link', { name: 'Français' }).tap();
	await expect(page.locator('html')).toHaveAttribute('lang', 'fr');
	await expect.poll(() => stays('start')).toBeGreaterThan(0);
	const before = stays('compare');
	await page.goto('about:blank');
	await expect.poll(() => stays('compare')).toBe(before + 1);

	const bodies = sent.map((body) => JSON.parse(body) as Record<string, unknown>);
	expect(bodies[0]).toMatchObject({ rooms: [{ room: 'start', dwell: 'under-10s' }], teeth: [], left: [] });
	for (const body of bodies) {
		expect(Object.keys(body).sort()).toEqual(['batch', 'languages', 'left', 'rooms', 'settings', 'teeth']);
		// version 4 of RFC 9562, 5.4: random, with no clock and no machine in it
		expect(body.batch).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
	}
	expect(sent.join()).not.toMatch(/Mozilla|Chrome|127\.0\.0\.1|localhost|\d{2}:\d{2}|\d{10}/);
	const stored = await page.context().cookies();
	expect(stored.map(({ name }) => name).filter((name) => /use|visit|count/i.test(name))).toEqual([]);
});

test('the database holds a day, ids of the exhibit, steps of time and small numbers', () => {
	const rows = kept();
	const kinds = new Set(rows.map(({ kind }) => kind));
	for (const kind of ['use-room', 'use-tooth', 'use-left', 'use-language'])
		expect([...kinds]).toContain(kind);
	const allowed: Record<string, (value: unknown) => boolean> = {
		room: (value) => (USE_ROOMS as unknown[]).includes(value),
		dwell: (value) => (DWELL_BUCKETS as readonly unknown[]).includes(value),
		step: (value) => (Object.values(USE_STEPS).flat() as unknown[]).includes(value),
		by: (value) => (USE_ENDS as readonly unknown[]).includes(value),
		setting: (value) => (USE_SETTINGS as readonly unknown[]).includes(value),
		language: (value) => ['en', 'fr', 'es'].includes(String(value)),
		specimen: (value) => /^[a-z0-9]+(-[a-z0-9]+)*$/.test(String(value)),
		laid: (value) => typeof value === 'boolean',
		// a place in the house that screens.yaml names, where one was told
		screen: (value) => /^[a-z0-9]+(-[a-z0-9]+)*$/.test(String(value)),
	};
	for (const row of rows) {
		expect(Object.keys(row).sort()).toEqual(['count', 'day', 'facts', 'kind']);
		expect(row.day).toMatch(/^\d{4}-\d{2}-\d{2}$/);
		for (const [key, value] of JSON.parse(row.facts) as [string, unknown][])
			expect(allowed[key]?.(value), `${key} ${String(value)}`).toBe(true);
	}
});

test('somebody’s own device counts nothing', async ({ page }) => {
	const sent = sendings(page);
	await page.goto('/compare?lang=en&screen=own');
	await ready(page);
	await page.waitForLoadState('networkidle');
	await page.getByRole('link', { name: 'Español' }).tap();
	await expect(page.locator('html')).toHaveAttribute('lang', 'es');
	await page.goto('about:blank');
	expect(sent).toEqual([]);
});

test('the desk shows what was counted, as plots, as tables and as CSV', async ({ page, request }) => {
	const origin = test.info().project.use.baseURL!;
	const none = { teeth: [], languages: [], settings: [] };
	for (let i = 0; i < 12; i += 1) {
		const rooms = [{ room: 'replacement', dwell: i < 5 ? '30-60s' : '2-5min' }];
		const left = [{ room: 'replacement', step: i < 6 ? 'wear' : 'life', by: 'reset' }];
		const data = { batch: crypto.randomUUID(), rooms, left, ...none };
		expect((await request.post(AT, { data, headers: { origin } })).status()).toBe(204);
	}
	const store = sqliteCounts(DB);
	const report = await useReport(store);
	await store.close();
	const room = report.rooms.find((one) => one.room === 'replacement')!;
	expect(room.stays).toBeGreaterThanOrEqual(12);

	await asStaff(page);
	await page.goto('/desk/use?lang=en');
	await ready(page);
	await expect(page.locator('[data-visits]')).toHaveText(report.visits!.toLocaleString('en'));
	const card = page.locator('[data-room="replacement"]');
	await expect(card).toContainText(`${room.stays!.toLocaleString('en')} stays`);
	await expect(card.getByRole('row', { name: /2 to 5 min/ })).toContainText(String(room.dwell.counts[4]));
	await expect(page.getByText('Too few days to compare those of the week.')).toBeVisible();
	await expect(page.getByRole('img', { name: 'Visits, day by day' })).toBeVisible();
	const { violations } = await new AxeBuilder({ page })
		.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
		.analyze();
	expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);

	await page.getByRole('link', { name: '7 days' }).press('Enter');
	await expect(page.getByRole('link', { name: '7 days' })).toHaveAttribute('aria-current', 'true');
	const csv = await page.request.get('/desk/use.csv?days=7&for=semicolon');
	expect(csv.headers()['content-type']).toContain('text/csv');
	const lines = (await csv.text()).split('\r\n');
	expect(lines[0]).toBe('\uFEFFday;what;room;specimen;detail;count');
	expect(lines).toContain(`;stays;replacement;;;${room.stays}`);
	expect(lines).toContain(`;dwell;replacement;;2-5min;${room.dwell.counts[4]}`);
	expect(lines).toContain(`${room.days[0].day};stays;replacement;;;${room.days[0].count ?? ''}`);
	expect((await (await page.request.get('/desk/use.csv')).text()).split('\r\n')[0]).toContain(
		'day,what,room',
	);
});

test('nobody but staff sees the counts', async ({ request }) => {
	for (const at of ['/desk/use', '/desk/use.csv']) {
		const answer = await request.get(at, { maxRedirects: 0 });
		expect(answer.status(), at).not.toBe(200);
		expect(await answer.text()).not.toMatch(/byDay|day,what/);
	}
});
