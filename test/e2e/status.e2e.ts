import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Browser, Page } from '@playwright/test';
import { AxeBuilder } from './axe';
import { asStaff, CONTENT, expect, ready, test } from './helpers';

// Several screens on one server: each as it was set up, all of them on the staff's page.

const FILE = path.join(CONTENT, 'screens.yaml');
const SCREENS = `
wall-test:
  title: Wall of the test
table-test:
  title: Table of the test
  rooms: [replacement, compare]
  screen: { diagonal_in: 24, width_px: 1920, height_px: 1080, bottom_edge_mm: 560 }
  first_language: fr
  reach: low
  volume_percent: 0
night-test:
  title: Dark of the test
  hours: [{ days: [DAY], from: 0:00, until: 0:01 }]
`;

let before = '';
test.beforeAll(async ({ request }) => {
	before = readFileSync(FILE, 'utf8');
	// lit for one minute of a day that is three days away
	const day = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'][(new Date().getDay() + 3) % 7];
	writeFileSync(FILE, SCREENS.replace('DAY', day));
	await expect
		.poll(async () => (await request.get('/?screen=table-test')).text(), { timeout: 20_000 })
		.toContain('lang="fr"');
});
test.afterAll(() => writeFileSync(FILE, before));

const open = async (browser: Browser, address: string): Promise<Page> => {
	const page = await (await browser.newContext()).newPage();
	await page.goto(address);
	await ready(page);
	return page;
};
const mark = (page: Page) => page.evaluate(() => void Object.assign(window, { marked: true }));
const marked = (page: Page) => page.evaluate(() => 'marked' in window).catch(() => false);

test('each screen is as it was set up, and staff see all, restart one, and learn of one that hangs', async ({
	browser,
	page,
	request,
}) => {
	const wall = await open(browser, '/?screen=wall-test');
	const table = await open(browser, '/?screen=table-test');
	const attic = await open(browser, '/?screen=attic');

	// the table is right before any script runs, and when it has
	const raw = await (await request.get('/?screen=table-test')).text();
	expect(raw).toMatch(/<html[^>]* lang="fr"[^>]* data-reach="low"/);
	const rooms = (at: Page) =>
		at
			.locator('nav [data-room]')
			.evaluateAll((doors) => doors.map((door) => (door as HTMLElement).dataset.room));
	expect(await rooms(table)).toEqual(['replacement', 'compare']);
	expect(await rooms(wall)).toEqual(['compare', 'feeding', 'replacement', 'quiz']);
	const mm = (at: Page) =>
		at.evaluate(() => parseFloat(document.documentElement.style.getPropertyValue('--screen-mm')));
	expect((await mm(table)) / (await mm(wall))).toBeCloseTo(32 / 24, 2);
	await table.goto('/feeding?lang=fr');
	expect(new URL(table.url()).pathname).toBe('/');
	await ready(table);

	await asStaff(page);
	await page.goto('/status');
	await ready(page);
	const row = (name: string) => page.locator(`[data-screen="${name}"]`);
	for (const name of ['wall-test', 'table-test', 'attic'])
		await expect(row(name)).toHaveAttribute('data-health', 'well', { timeout: 10_000 });
	await expect(row('night-test')).toHaveAttribute('data-health', 'never');
	await expect(row('attic').locator('[data-note="unknown"]')).toBeVisible();
	await expect(row('wall-test').locator('[data-note="unknown"]')).toHaveCount(0);
	await expect(row('wall-test')).toContainText('Wall of the test');

	// the table's page stands still from here on; its watcher is at work by now
	await expect.poll(() => table.workers().length).toBeGreaterThan(0);
	await Promise.all(table.workers().map((worker) => worker.evaluate(() => true)));
	const stands = table.evaluate(() => {
		const end = performance.now() + 18_500;
		while (performance.now() < end);
	});

	const note = async (name: string) => (await request.get(`/screens/${name}`)).json() as Promise<object>;
	expect(await note('wall-test')).toMatchObject({
		name: 'wall-test',
		health: 'well',
		restart_browser: false,
	});
	expect((await request.get('/screens/nobody')).status()).toBe(404);
	const { violations } = await new AxeBuilder({ page }).analyze();
	expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`)).toEqual([]);

	await Promise.all([mark(wall), mark(attic)]);
	await row('wall-test').getByRole('button', { name: 'Restart Wall of the test' }).click();
	await expect(page.locator('[data-said]')).toContainText('Wall of the test');
	await expect.poll(() => marked(wall)).toBe(false);
	await ready(wall);
	expect(await marked(attic)).toBe(true);

	await expect(row('table-test')).toHaveAttribute('data-health', 'hung', { timeout: 25_000 });
	expect(await note('table-test')).toMatchObject({ health: 'hung', restart_browser: true });
	await stands;
	await expect(row('table-test')).toHaveAttribute('data-health', 'well', { timeout: 10_000 });
	expect(await note('table-test')).toMatchObject({ health: 'well', restart_browser: false });

	const health = (await (await request.get('/healthz')).json()) as { screens: { well: number } };
	// beside these three, whatever pages the tests before left
	expect(health.screens.well).toBeGreaterThanOrEqual(3);
	await Promise.all([wall, table, attic].map((one) => one.context().close()));
	await expect(row('attic')).toHaveAttribute('data-health', 'closed', { timeout: 10_000 });
});

test('after hours a screen is black and draws nothing, until somebody touches it', async ({ page }) => {
	await page.goto('/?screen=night-test');
	const cover = page.locator('[data-after-hours="dark"]');
	await expect(cover).toBeVisible();
	await expect(cover).toHaveCSS('background-color', 'rgb(0, 0, 0)');
	const frames = () => page.evaluate(() => window.toothTable?.stats().frames ?? 0);
	const still = await frames();
	await page.waitForTimeout(1500);
	expect(await frames()).toBe(still);
	await page.touchscreen.tap(600, 500);
	await expect(cover).toHaveCount(0);
	await ready(page);
	expect(new URL(page.url()).pathname).toBe('/');
	await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
});

test('the status page is for staff alone', async ({ page, request }) => {
	const answer = await request.get('/status', { maxRedirects: 0, headers: { accept: 'text/html' } });
	expect(answer.status()).toBe(303);
	expect(answer.headers().location).toMatch(/^\/desk\/enter/);
	const order = await request.post('/status/restart', { data: { key: 'wall-test' } });
	expect([401, 403, 404]).toContain(order.status());
	await page.goto('/');
	await ready(page);
	expect(await page.getByRole('link', { name: /status/i }).count()).toBe(0);
});
