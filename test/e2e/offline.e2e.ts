import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { cp, readdir, readFile, rename, writeFile } from 'node:fs/promises';
import { createServer, type AddressInfo } from 'node:net';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { bin, ROOT } from '../../src/scripts/setup.mjs';
import { readExportList, type ExportList } from '../../src/lib/kiosk/offline/exportList';
import { allowFault, CONTENT, drawn, expect, ready, test } from './helpers';
import { fileServer } from './fileServer';

const WORK = path.join(ROOT, 'test-results', 'export');
const DATA = path.join(CONTENT, '..', 'data');
const LABEL = path.join(CONTENT, 'specimens', 'skm-0104', 'label.en.md');

function exportTo(folder: string): ExportList {
	const run = spawnSync(
		process.execPath,
		[bin('tsx', 'dist/cli.mjs'), 'src/lib/server/export/exportExhibit.ts', folder],
		{ cwd: ROOT, encoding: 'utf8', env: { ...process.env, CONTENT_DIR: CONTENT, DATA_DIR: DATA } },
	);
	expect(run.stderr).toBe('');
	expect(run.status).toBe(0);
	return list(folder, run.stdout);
}
function list(folder: string, said: string): ExportList {
	const read = readExportList(readFileSync(path.join(folder, 'export.json'), 'utf8'));
	if (!read) throw new Error(`no export.json in ${folder}: ${said}`);
	return read;
}
/** Versions that the browser keeps whole. */
const kept = (page: Page): Promise<string[]> =>
	page.evaluate(async () => {
		const whole: string[] = [];
		for (const name of await caches.keys()) {
			const [, version] = /version-(\w+)$/.exec(name) ?? [];
			if (
				version &&
				(await (
					await caches.open(name)
				).match(new URL('export.json', document.baseURI.replace(/\/teeth\/.*/, '/teeth/'))))
			)
				whole.push(version);
		}
		return whole;
	});
const freePort = (): Promise<number> =>
	new Promise((done) => {
		const probe = createServer().listen(0, 'localhost', () => {
			const { port } = probe.address() as AddressInfo;
			probe.close(() => done(port));
		});
	});
/** Lets the page look for a newer export now. */
const look = (page: Page) => page.evaluate(() => window.dispatchEvent(new Event('online')));
const title = (page: Page, place: number) => page.locator(`[data-place="${place}"] h2`);

test.describe('an export on a web server that knows only files', () => {
	const first = path.join(WORK, 'first');
	const second = path.join(WORK, 'second');
	let before: ExportList;
	let after: ExportList;
	let label = '';
	let files: Awaited<ReturnType<typeof fileServer>>;

	test.beforeAll(async () => {
		label = await readFile(LABEL, 'utf8');
		before = exportTo(first);
		try {
			await cp(first, second, { recursive: true });
			await writeFile(LABEL, label.replace(/^title: .*$/m, 'title: A name mended overnight'));
			after = exportTo(second);
		} finally {
			await writeFile(LABEL, label);
		}
		files = await fileServer('/teeth/', first);
	});
	test.afterAll(() => files.close());

	test('export: only what changed differs, and every file is what the list says', async () => {
		const old = new Map(before.files.map((file) => [file.path, file.sha256]));
		expect(after.version).not.toBe(before.version);
		expect(after.exhibit).not.toBe(before.exhibit);
		expect(after.code).toBe(before.code);
		expect(after.files.map(({ path }) => path)).toEqual(before.files.map(({ path }) => path));
		const changed = after.files.filter((file) => old.get(file.path) !== file.sha256);
		expect(changed.length).toBeGreaterThan(0);
		expect(changed.filter(({ path }) => !/(index\.html|__data\.json)$/.test(path))).toEqual([]);
		// what stands there is what the list says, and nothing else
		const there = (await readdir(second, { recursive: true, withFileTypes: true }))
			.filter((entry) => entry.isFile())
			.map((entry) =>
				path.relative(second, path.join(entry.parentPath, entry.name)).split(path.sep).join('/'),
			);
		expect(there.sort()).toEqual(['export.json', ...after.files.map((file) => file.path)].sort());
		for (const file of after.files) {
			const bytes = await readFile(path.join(second, file.path));
			expect(createHash('sha256').update(bytes).digest('hex'), file.path).toBe(file.sha256);
		}
		const page = await readFile(path.join(first, 'fr', 'compare', 'index.html'), 'utf8');
		expect(page.includes('http-equiv="content-security-policy"')).toBe(true);
		expect(/unsafe-inline|frame-ancestors/.test(page)).toBe(false);
		// whose it is and where it comes from stands with every tooth
		expect(page.includes('creativecommons.org/licenses/by/4.0')).toBe(true);
		expect(page.includes('rightsHolder:"Skerrow Museum"')).toBe(true);
		expect(page.includes('Leidy, J. 1865')).toBe(true);
		expect(before.files.filter(({ path }) => /^(desk|status|healthz|live)\b/.test(path))).toEqual([]);
	});

	test('export: in a folder of a site, in each language, by address, and without a network', async ({
		page,
	}) => {
		await page.goto(files.root);
		await ready(page);
		await page.locator('nav a[hreflang="fr"]').first().click();
		await expect(page).toHaveURL(`${files.root}fr/`);
		await expect(page.locator('html')).toHaveAttribute('lang', 'fr');
		await page.locator('[data-room="compare"]').click();
		await expect(page).toHaveURL(/\/teeth\/fr\/compare\//);
		await ready(page);
		await drawn(page);

		await page.goto(`${files.root}compare?teeth=skm-0131,skm-0104&lang=es`);
		await expect(page).toHaveURL(/\/teeth\/es\/compare\/\?teeth=skm-0131,skm-0104$/);
		await ready(page);
		await drawn(page);
		await expect(page.locator('html')).toHaveAttribute('lang', 'es');
		await expect(page.locator('[data-place="1"]')).toHaveAttribute('data-specimen', 'skm-0131');
		const picture = page.locator('[data-place="1"] .label');
		await expect(picture).not.toBeEmpty();
		await expect.poll(() => kept(page)).toEqual([before.version]);

		files.cut(true);
		try {
			await page.reload();
			await ready(page);
			await drawn(page);
			await expect(page.locator('[data-place="2"]')).toHaveAttribute('data-specimen', 'skm-0104');
			await page.locator('.home').click();
			await expect(page).toHaveURL(`${files.root}es/`);
			await page.locator('[data-room="feeding"]').click();
			await ready(page);
			await page.goto(`${files.root}quiz/?lang=fr`);
			await ready(page);
			await expect(page.locator('html')).toHaveAttribute('lang', 'fr');
			await page.locator('[data-teams="2"]').click();
			await page.locator('[data-question]').waitFor();
		} finally {
			files.cut(false);
		}
	});

	test('export: a newer one waits until the visitor has left', async ({ page }) => {
		files.serve(first);
		// fewer pixels, drawn without a graphics card
		await page.setViewportSize({ width: 1067, height: 600 });
		await page.clock.install();
		await page.goto(`${files.root}compare/?teeth=skm-0104,skm-0131`);
		await ready(page);
		const old = await title(page, 1).innerText();
		await expect.poll(() => kept(page)).toEqual([before.version]);
		// served by the worker from here on
		await page.reload();
		await ready(page);

		files.serve(second);
		await look(page);
		await expect.poll(async () => (await kept(page)).length).toBe(2);
		await expect(title(page, 1)).toHaveText(old);
		await page.locator('.home').click();
		await page.locator('[data-room="compare"]').waitFor();
		await page.goBack();
		await ready(page);
		await expect(title(page, 1)).toHaveText(old);

		for (let i = 0; i < 26; i += 1) await page.clock.runFor(5_000);
		await expect(page).toHaveURL(files.root);
		await page.goto(`${files.root}compare/?teeth=skm-0104,skm-0131`);
		await expect(title(page, 1)).toHaveText('A name mended overnight');
		await look(page);
		await expect.poll(() => kept(page)).toEqual([after.version]);
		files.serve(first);
	});
});

test.describe('a server that goes away', () => {
	let origin = '';
	let server: ChildProcess | null = null;
	async function start(): Promise<void> {
		const port = origin ? Number(new URL(origin).port) : await freePort();
		origin = `http://localhost:${port}`;
		server = spawn(process.execPath, ['build/index.js'], {
			cwd: ROOT,
			stdio: 'ignore',
			env: {
				...process.env,
				NODE_ENV: 'production',
				HOST: '127.0.0.1',
				PORT: String(port),
				CONTENT_DIR: CONTENT,
				DATA_DIR: DATA,
			},
		});
		await expect
			.poll(() =>
				fetch(`${origin}/healthz`).then(
					({ ok }) => ok,
					() => false,
				),
			)
			.toBe(true);
	}
	async function kill(): Promise<void> {
		const going = server;
		server = null;
		if (!going || going.exitCode !== null) return;
		const gone = new Promise((done) => going.once('exit', done));
		going.kill('SIGKILL');
		await gone;
	}
	test.afterEach(() => kill());

	test('a link touched meanwhile: the page stays, says so, and goes on by itself', async ({ page }) => {
		allowFault(page, /Failed to load resource|ERR_|Failed to fetch/);
		await start();
		await page.goto(`${origin}/compare?teeth=skm-0104,skm-0131`);
		await ready(page);
		await drawn(page);
		await kill();
		await page.locator('.home').click();
		await expect(page.locator('[data-away]')).toBeVisible();
		await expect(page).toHaveURL(/\/compare/);
		// the teeth are still there to be turned, and whoever would rather stay does
		await page.locator('[data-away] button').click();
		await expect(page.locator('[data-away]')).toHaveCount(0);
		await expect(title(page, 1)).toBeVisible();
		await page.locator('.home').click();
		await expect(page.locator('[data-away]')).toBeVisible();
		// a reload by the page itself is held back too
		await page.evaluate(() => location.reload());
		await expect(title(page, 1)).toBeVisible();
		await page.locator('.home').click();
		await start();
		await page.locator('[data-room="compare"]').waitFor();
		await expect(page.locator('[data-away]')).toHaveCount(0);
	});
});

test('what lies before a visitor stays, even when it is taken out of the exhibit', async ({
	page,
	request,
}) => {
	const folder = path.join(CONTENT, 'specimens', 'skm-0131');
	const aside = path.join(CONTENT, '..', 'aside');
	const count = async () =>
		((await (await request.get('/healthz')).json()) as { specimens: number }).specimens;
	const all = await count();
	await page.goto('/compare?teeth=skm-0104,skm-0131');
	await ready(page);
	await drawn(page);
	const name = await title(page, 2).innerText();
	await rename(folder, aside);
	try {
		await expect.poll(count).toBe(all - 1);
		await page.waitForTimeout(1_500);
		await expect(title(page, 2)).toHaveText(name);
		await expect(page.locator('[data-place="2"]')).toHaveAttribute('data-specimen', 'skm-0131');
		// put away, it is gone from the drawer too
		await page.locator('.home').click();
		await page.locator('[data-room="compare"]').click();
		await ready(page);
		await expect(page.locator('button[data-specimen="skm-0131"]')).toHaveCount(0);
	} finally {
		await rename(aside, folder);
	}
	await expect(page.locator('button[data-specimen="skm-0131"]')).toBeVisible();
});

test('a newer program comes when nobody is here, once', async ({ page }) => {
	await page.setViewportSize({ width: 1067, height: 600 });
	await page.clock.install();
	const { exhibit } = (await (await page.request.get('/healthz')).json()) as { exhibit: string };
	const news = { hash: exhibit, code: 'another', shapes: [] };
	await page.route(/\/live(\?|$)/, (route) =>
		route.fulfill({
			contentType: 'text/event-stream',
			body: `retry: 9000000\n\nevent: exhibit\ndata: ${JSON.stringify(news)}\n\n`,
		}),
	);
	let opened = 0;
	page.on('load', () => (opened += 1));
	await page.goto('/');
	await ready(page);
	for (let i = 0; i < 7; i += 1) await page.clock.runFor(5_000);
	expect(opened).toBe(1);
	await page.clock.runFor(7_000);
	await expect.poll(() => opened).toBe(2);
	await ready(page);
	for (let i = 0; i < 9; i += 1) await page.clock.runFor(5_000);
	expect(opened).toBe(2);
});

test('a network cut in the middle of a change leaves the page, and goes on by itself', async ({ page }) => {
	allowFault(page, /Failed to load resource|ERR_|Failed to fetch/);
	const { version } = (await (await page.request.get('/_app/version.json')).json()) as { version: string };
	const news = { hash: 'another', code: version, shapes: [] };
	let cut = false;
	await page.route('**/*', (route) => {
		const { pathname } = new URL(route.request().url());
		if (pathname === '/live')
			return route.fulfill({
				contentType: 'text/event-stream',
				body: `retry: 9000000\n\nevent: exhibit\ndata: ${JSON.stringify(news)}\n\n`,
			});
		if (pathname.endsWith('__data.json')) cut = true;
		return cut ? route.abort() : route.continue();
	});
	let opened = 0;
	page.on('load', () => (opened += 1));
	await page.goto('/feeding');
	await ready(page);
	await expect(page.locator('[data-away]')).toBeVisible();
	await expect(page.locator('.home')).toBeVisible();
	expect(opened).toBe(1);
	await page.unroute('**/*');
	await expect.poll(() => opened).toBe(2);
	await ready(page);
	await expect(page.locator('[data-away]')).toHaveCount(0);
});
