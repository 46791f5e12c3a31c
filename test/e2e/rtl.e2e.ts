import { spawn, type ChildProcess } from 'node:child_process';
import { cpSync, rmSync } from 'node:fs';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { arabic, copyWithLanguages, pseudo } from '../fixtures/madeLanguage';
import { AxeBuilder } from './axe';
import { CONTENT, expect, ready, test } from './helpers';

// A language that runs from right to left and one whose words are 40 % longer, both added with files alone.
test.describe.configure({ mode: 'serial', timeout: 120_000 });

const ROOT = path.resolve(CONTENT, '../../..');
const folder = (name: string) => path.resolve(CONTENT, '..', name);
let server: ChildProcess;
let origin: string;

test.beforeAll(async ({}, info) => {
	const port = Number(new URL(String(info.project.use.baseURL)).port) + 1;
	origin = `http://localhost:${port}`;
	for (const name of ['languages', 'languages-data']) rmSync(folder(name), { recursive: true, force: true });
	copyWithLanguages(path.join(ROOT, 'content'), folder('languages'), [pseudo, arabic]);
	cpSync(folder('data'), folder('languages-data'), {
		recursive: true,
		filter: (file) => !/counts\.db|snapshot\.json/.test(file),
	});
	server = spawn(process.execPath, ['src/scripts/start.mjs'], {
		cwd: ROOT,
		env: {
			...process.env,
			PORT: String(port),
			HOST: '127.0.0.1',
			CONTENT_DIR: folder('languages'),
			DATA_DIR: folder('languages-data'),
		},
		stdio: 'ignore',
	});
	const answers = () =>
		fetch(`${origin}/healthz`).then(
			({ ok }) => ok,
			() => false,
		);
	await expect.poll(answers, { timeout: 90_000 }).toBe(true);
});
test.afterAll(() => void server.kill('SIGKILL'));

async function open(page: Page, address: string, lang: string): Promise<void> {
	await page.goto(`${origin}${address}?lang=${lang}`);
	await ready(page);
}

/** Words that run over the edge of the window, or out of the button that they name; and a page wider than the window. */
const runsOver = (page: Page): Promise<string[]> =>
	page.evaluate(() => {
		const found: string[] = [];
		if (document.documentElement.scrollWidth > innerWidth + 1) found.push('the page scrolls sideways');
		for (const element of document.querySelectorAll<HTMLElement>('.room *')) {
			const words = [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim());
			const box = element.getBoundingClientRect();
			if (!words || box.width <= 2 || element.closest('svg, .unseen, .drawn, .skip, [hidden]')) continue;
			if (getComputedStyle(element).visibility === 'hidden') continue;
			let scrolls = false;
			for (let above = element.parentElement; above; above = above.parentElement)
				scrolls ||= ['auto', 'scroll', 'hidden'].includes(getComputedStyle(above).overflowX);
			const text = element.textContent?.trim().slice(0, 40);
			if (!scrolls && (box.right > innerWidth + 1 || box.left < -1)) found.push(`over the edge: ${text}`);
			const button = element.closest('button, a');
			if (!button || button === element) continue;
			const around = button.getBoundingClientRect();
			if (box.right > around.right + 2 || box.left < around.left - 2)
				found.push(`out of its button: ${text}`);
		}
		return found;
	});

/** rooms that axe looks at too: it takes its time, and the rest is alike */
const AXE = ['/compare', '/quiz'];
const ROOMS = ['/', '/compare', '/feeding', '/replacement', '/quiz'];

test('Arabic: every room is mirrored, nothing runs over, and axe finds nothing', async ({ page }) => {
	for (const room of ROOMS) {
		await open(page, room, 'ar');
		await expect(page.locator('html')).toHaveAttribute('dir', 'rtl');
		await expect(page.locator('html')).toHaveAttribute('lang', 'ar');
		expect([room, await runsOver(page)]).toEqual([room, []]);
		// the way back, or the museum's name, stands on the right; the languages on the left
		const first = (await page.locator('header').locator('a, p').first().boundingBox())!;
		const languages = (await page.locator('header nav').boundingBox())!;
		expect(first.x).toBeGreaterThan(languages.x + languages.width);
		if (!AXE.includes(room)) continue;
		const { violations } = await new AxeBuilder({ page })
			.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
			.analyze();
		expect(violations.map(({ id, nodes }) => `${room} ${id}: ${nodes[0]?.html}`)).toEqual([]);
	}
});

test('Arabic: places, keys, numbers and Latin names', async ({ page }) => {
	await open(page, '/compare', 'ar');
	const place = async (number: number) => (await page.locator(`[data-place="${number}"]`).boundingBox())!;
	expect((await place(1)).x).toBeGreaterThan((await place(2)).x);
	// buttons that mean a direction in space keep it
	const turns = page.locator('[data-place="1"] .spatial button');
	expect((await turns.nth(0).boundingBox())!.x).toBeLessThan((await turns.nth(1).boundingBox())!.x);
	// the next tab is the one to the left
	const tabs = page.locator('.shelf [role="tab"]');
	await tabs.nth(0).focus();
	await page.keyboard.press('ArrowLeft');
	await expect(tabs.nth(1)).toHaveAttribute('aria-selected', 'true');
	// number first, unit behind it to its right
	const order = await page
		.locator('[data-measure="measure_height"] bdi')
		.first()
		.evaluate((bdi) => {
			const at = (node: Node) => {
				const range = document.createRange();
				range.selectNodeContents(node);
				return range.getBoundingClientRect().left;
			};
			return at(bdi.firstChild!) < at(bdi.querySelector('.unit')!);
		});
	expect(order).toBe(true);
	// and back: the same page in English runs from the left
	await page.locator('header a[hreflang="en"]').tap();
	await expect(page.locator('html')).toHaveAttribute('dir', 'ltr');
	await expect.poll(async () => (await place(1)).x < (await place(2)).x).toBe(true);
});

for (const [name, width, height] of [
	['wide', 1920, 1080],
	['upright', 1080, 1920],
	['phone', 390, 844],
] as const)
	test(`words that are 40 % longer fit, ${name}`, async ({ page }) => {
		await page.setViewportSize({ width, height });
		for (const room of name === 'phone'
			? ROOMS
			: name === 'wide'
				? ['/compare', '/quiz']
				: ['/', '/replacement']) {
			await open(page, room, 'qaa');
			expect([room, await runsOver(page)]).toEqual([room, []]);
		}
	});
