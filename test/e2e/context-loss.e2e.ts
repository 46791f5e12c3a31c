import type { Page } from '@playwright/test';
import { allowFault, changed, drawn, expect, pixels, ready, test, touchDrag, view } from './helpers';

// The graphics driver takes the WebGL context away, as it may at any hour of a day in a gallery.

/** Takes the context away; keeps the means to give it back, which a lost context no longer hands out. */
const lose = (page: Page): Promise<void> =>
	page.evaluate(() => {
		const context = document.querySelector('canvas')?.getContext('webgl2');
		const means = context?.getExtension('WEBGL_lose_context');
		if (!means) throw new Error('lose: no context to lose');
		Object.assign(window, { means });
		means.loseContext();
	});
const restore = (page: Page): Promise<void> =>
	page.evaluate(() => (window as unknown as { means: WEBGL_lose_context }).means.restoreContext());

const notice = (page: Page) => page.getByText('One moment, the picture is coming back.');

test.beforeEach(({ page }) => {
	// Chromium and three.js say so themselves when a context goes
	allowFault(page, /context (was )?lost|CONTEXT_LOST/i);
});

test('a lost context is said, and when it comes back the same picture stands there', async ({ page }) => {
	await page.goto('/compare');
	await ready(page);
	await drawn(page);
	await touchDrag(page, view(page, 1), 90, 0);
	await drawn(page);
	// the hint has gone with the first touch: only the teeth can differ
	const before = [await pixels(view(page, 1)), await pixels(view(page, 2))];
	for (const { deviation } of before) expect(deviation).toBeGreaterThan(8);
	const titles = await page.locator('[data-place] h2').allInnerTexts();

	for (let losses = 1; losses <= 2; losses += 1) {
		await lose(page);
		await expect(notice(page)).toBeVisible();
		await expect.poll(() => page.evaluate(() => window.toothTable?.stats().contextLosses)).toBe(losses);
		// words and drawer stay in use meanwhile
		expect(await page.locator('[data-place] h2').allInnerTexts()).toEqual(titles);
		await restore(page);
		await expect(notice(page)).toHaveCount(0);
		await drawn(page);
		await expect
			.poll(async () => changed(before[0], await pixels(view(page, 1))), { timeout: 10_000 })
			.toBeLessThan(0.01);
		expect(changed(before[1], await pixels(view(page, 2)))).toBeLessThan(0.01);
	}

	// and it still turns
	await touchDrag(page, view(page, 1), 160, 0);
	await drawn(page);
	expect(changed(before[0], await pixels(view(page, 1)))).toBeGreaterThan(0.02);
	expect(await page.evaluate(() => window.toothTable?.stats().contexts)).toBe(1);
});

test('a tooth picked while the context is lost is there when it comes back', async ({ page }) => {
	await page.goto('/compare');
	await ready(page);
	await drawn(page);
	const before = await pixels(view(page, 1));
	await lose(page);
	await expect(notice(page)).toBeVisible();
	const pick = page.locator('button[data-specimen][aria-pressed="false"]').nth(2);
	const id = String(await pick.getAttribute('data-specimen'));
	await pick.tap();
	await restore(page);
	await expect(notice(page)).toHaveCount(0);
	await expect(page.locator('[data-place="1"]')).toHaveAttribute('data-specimen', id);
	await drawn(page);
	const after = await pixels(view(page, 1));
	expect(after.deviation).toBeGreaterThan(8);
	expect(changed(before, after)).toBeGreaterThan(0.02);
});

test('a context that does not come back brings the page up anew, with the same teeth', async ({ page }) => {
	await page.goto('/compare');
	await ready(page);
	await drawn(page);
	await page.locator('button[data-specimen][aria-pressed="false"]').nth(1).tap();
	await drawn(page);
	const teeth = () =>
		page
			.locator('article[data-specimen]')
			.evaluateAll((panes) => panes.map((pane) => pane.getAttribute('data-specimen')));
	const lying = await teeth();
	await expect.poll(() => page.url()).toContain(lying.join(','));
	await page.evaluate(() => Object.assign(window, { old: true }));
	const lost = Date.now();
	await lose(page);
	await expect(notice(page)).toBeVisible();
	await expect
		.poll(() => page.evaluate(() => 'old' in window).catch(() => true), { timeout: 20_000 })
		.toBe(false);
	expect(Date.now() - lost).toBeLessThan(15_000);
	expect(Date.now() - lost).toBeGreaterThan(4_000);
	await ready(page);
	await drawn(page);
	await expect(notice(page)).toHaveCount(0);
	expect(await teeth()).toEqual(lying);
	expect((await pixels(view(page, 1))).deviation).toBeGreaterThan(8);
});
