import type { Page } from '@playwright/test';
import { allowFault, changed, drawn, expect, pixels, ready, test, touchDrag, view } from './helpers';

// What happens to a screen in years: a driver that fails, a clock that is set, a machine too slow, a second tab.

const HOUR_ms = 3_600_000;
const stats = (page: Page) => page.evaluate(() => window.toothTable?.stats() ?? null);

test('the context is lost twenty times: one context, the same teeth, and they turn', async ({ page }) => {
	allowFault(page, /context (was )?lost|CONTEXT_LOST/i);
	await page.goto('/compare');
	await ready(page);
	await drawn(page);
	const titles = await page.locator('[data-place] h2').allInnerTexts();
	/** what is held while the picture stands at full quality */
	const held = async () => {
		await expect.poll(async () => (await stats(page))?.full).toBe(true);
		const { geometries, textures, views } = (await stats(page))!;
		return { geometries, textures, views };
	};
	let half = await held();
	for (let losses = 1; losses <= 20; losses += 1) {
		await page.evaluate(async () => {
			const means = document
				.querySelector('canvas')!
				.getContext('webgl2')!
				.getExtension('WEBGL_lose_context')!;
			means.loseContext();
			await new Promise((resolve) => setTimeout(resolve, 60));
			means.restoreContext();
		});
		await expect.poll(async () => (await stats(page))?.contextLosses).toBe(losses);
		await drawn(page);
		if (losses === 10) half = await held();
	}
	expect(await page.locator('[data-place] h2').allInnerTexts()).toEqual(titles);
	expect(await held()).toEqual(half);
	expect((await stats(page))?.contexts).toBe(1);
	expect(await page.locator('canvas').count()).toBe(1);
	const picture = await pixels(view(page, 1));
	expect(picture.deviation).toBeGreaterThan(8);
	await touchDrag(page, view(page, 1), 160, 0);
	await drawn(page);
	expect(changed(picture, await pixels(view(page, 1)))).toBeGreaterThan(0.02);
});

test('the process that draws crashes: the picture comes back', async ({ page, browser }) => {
	allowFault(page, /context (was )?lost|CONTEXT_LOST/i);
	await page.goto('/compare');
	await ready(page);
	await drawn(page);
	const titles = await page.locator('[data-place] h2').allInnerTexts();
	const client = await browser.newBrowserCDPSession();
	await client.send('Browser.crashGpuProcess');
	// where the context does not come back by itself, the page is loaded anew after 10 s and counts from nought
	await expect
		.poll(async () => (await stats(page))?.contextLosses, { timeout: 20_000, intervals: [20] })
		.toBeGreaterThanOrEqual(1);
	await expect.poll(async () => (await stats(page))?.contexts, { timeout: 30_000 }).toBe(1);
	await drawn(page);
	expect(await page.locator('[data-place] h2').allInnerTexts()).toEqual(titles);
	expect((await pixels(view(page, 1))).deviation).toBeGreaterThan(8);
});

test('the clock jumps three days on and three days back: nobody is sent away, and idleness is still noticed', async ({
	page,
}) => {
	await page.clock.install({ time: new Date(2026, 10, 25, 11, 0) });
	await page.goto('/compare');
	await ready(page);
	await page.clock.runFor(3_000);
	const question = page.locator('dialog[data-idle]');
	for (const hours of [72, -72, 24 * 365, -24 * 365]) {
		const now = await page.evaluate(() => Date.now());
		await page.clock.setSystemTime(now + hours * HOUR_ms);
		await page.clock.runFor(20_000);
		await expect(question).toBeHidden();
		expect(new URL(page.url()).pathname).toBe('/compare');
		// somebody is here
		await page.locator('#shelf-tab-tools').tap();
	}
	for (let s = 0; s < 105; s += 5) await page.clock.runFor(5_000);
	await expect(question).toBeVisible();
});

test('two tabs of one browser: each its own table, language and context', async ({ page, context }) => {
	const second = await context.newPage();
	await page.goto('/compare');
	await second.goto('/compare?lang=es');
	for (const tab of [page, second]) {
		await tab.bringToFront();
		await ready(tab);
		await drawn(tab);
	}
	const first = await page.locator('[data-place="1"]').getAttribute('data-specimen');
	await second.locator('button[data-specimen]:not([aria-pressed="true"])').nth(4).tap();
	await expect(second.locator('[data-place="1"]')).not.toHaveAttribute('data-specimen', first!);
	await page.bringToFront();
	await expect(page.locator('[data-place="1"]')).toHaveAttribute('data-specimen', first!);
	await expect(page.locator('html')).toHaveAttribute('lang', 'en');
	await expect(second.locator('html')).toHaveAttribute('lang', 'es');
	for (const tab of [page, second]) expect((await stats(tab))?.contexts).toBe(1);
	await second.close();
});

test('a machine ten times slower: two teeth, a turn, another room, and no error', async ({ page }) => {
	test.setTimeout(150_000);
	const client = await page.context().newCDPSession(page);
	await client.send('Emulation.setCPUThrottlingRate', { rate: 10 });
	await page.goto('/');
	await ready(page);
	await page.locator('[data-room="compare"]').tap();
	for (const place of [1, 2] as const)
		await expect(view(page, place)).toHaveAttribute('data-drawn', 'true', { timeout: 60_000 });
	const before = await pixels(view(page, 1));
	await touchDrag(page, view(page, 1), 160, 0);
	await expect.poll(async () => (await stats(page))?.moving, { timeout: 30_000 }).toBe(false);
	expect(changed(before, await pixels(view(page, 1)))).toBeGreaterThan(0.02);
	await page.locator('header a.home').tap();
	await page.locator('[data-room="feeding"]').tap();
	await page.waitForURL(/\/feeding/);
	await ready(page);
	await client.send('Emulation.setCPUThrottlingRate', { rate: 1 });
});
