import { AxeBuilder } from './axe';
import type { Locator, Page } from '@playwright/test';
import { expect, ready, test } from './helpers';

// A screen whose browser refuses WebGL: drawings stand in the place of turning teeth, and the room stays whole.

test.beforeEach(async ({ page }) => {
	await page.addInitScript(() => {
		const real = HTMLCanvasElement.prototype.getContext as (...args: unknown[]) => unknown;
		HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, ...args: unknown[]) {
			return /webgl/.test(String(args[0])) ? null : real.apply(this, args);
		} as typeof HTMLCanvasElement.prototype.getContext;
	});
});

const drawing = (page: Page, place: 1 | 2): Locator =>
	page.locator(`[data-place="${place}"] [data-drawing] svg`);

/** Path data of everything drawn in one part. */
const inkOf = (of: Locator, part: string): Promise<string> =>
	of
		.locator(`[data-part="${part}"] path`)
		.evaluateAll((paths) => paths.map((path) => path.getAttribute('d')).join(' '));

test('two teeth are drawn from three sides and cut across, at one scale', async ({ page }) => {
	await page.goto('/compare');
	await ready(page);
	for (const place of [1, 2] as const) {
		const of = drawing(page, place);
		await expect(of).toBeVisible();
		for (const part of ['side', 'front', 'tip', 'section']) {
			expect((await inkOf(of, part)).length, part).toBeGreaterThan(200);
			const box = await of.locator(`[data-part="${part}"]`).boundingBox();
			expect(box!.width, part).toBeGreaterThan(10);
			expect(box!.height, part).toBeGreaterThan(10);
		}
		await expect(of.locator('text')).toHaveText([
			'Side',
			'Front edge',
			'From the tip',
			'Cut half way up',
			/^\d+(\.\d+)? mm$/,
		]);
		// true to the measures in words beside it
		const pxPerMm = Number(await of.locator('[data-px-per-mm]').getAttribute('data-px-per-mm'));
		const bar = await of.locator('[data-px-per-mm]').boundingBox();
		const mm = Number(await of.locator('[data-px-per-mm]').getAttribute('data-mm'));
		expect(Math.abs(bar!.width / (mm * pxPerMm) - 1)).toBeLessThan(0.03);
		const title = await page.locator(`[data-place="${place}"] h2`).innerText();
		await expect(page.locator(`[data-place="${place}"]`).getByRole('img', { name: title })).toBeVisible();
		await expect(page.locator(`[data-place="${place}"] .words dt`).first()).toBeVisible();
	}
	expect(await inkOf(drawing(page, 1), 'side')).not.toBe(await inkOf(drawing(page, 2), 'side'));
	// nothing promises that the teeth turn
	await expect(page.getByRole('application')).toHaveCount(0);
	await expect(page.locator('.buttons, .hint')).toHaveCount(0);
});

test('another tooth from the drawer is drawn in its turn', async ({ page }) => {
	await page.goto('/compare');
	await ready(page);
	await expect(drawing(page, 1)).toBeVisible();
	const before = await inkOf(drawing(page, 1), 'side');
	const second = await inkOf(drawing(page, 2), 'side');
	const pick = page.locator('button[data-specimen][aria-pressed="false"]').nth(3);
	const id = String(await pick.getAttribute('data-specimen'));
	await pick.tap();
	await expect(page.locator('[data-place="1"]')).toHaveAttribute('data-specimen', id);
	await expect.poll(() => inkOf(drawing(page, 1), 'side')).not.toBe(before);
	expect(await inkOf(drawing(page, 2), 'side')).toBe(second);
	const title = await page.locator('[data-place="1"] h2').innerText();
	await expect(drawing(page, 1).locator('title')).toHaveText(title);
});

test('the drawings speak the language chosen and fit their place on every screen', async ({ page }) => {
	for (const [width, height] of [
		[1920, 1080],
		[1080, 1920],
		[390, 844],
	]) {
		await page.setViewportSize({ width, height });
		await page.goto('/compare?lang=fr');
		await ready(page);
		for (const place of [1, 2] as const) {
			await expect(drawing(page, place)).toBeVisible();
			await expect(drawing(page, place).locator('text').first()).toHaveText('De côté');
			const [inner, outer] = await Promise.all([
				drawing(page, place).boundingBox(),
				page.locator(`[data-place="${place}"] .view`).boundingBox(),
			]);
			expect(inner!.width).toBeLessThanOrEqual(outer!.width + 1);
			expect(inner!.height).toBeLessThanOrEqual(outer!.height + 1);
			expect(inner!.width).toBeGreaterThan(outer!.width * 0.9);
			const side = await drawing(page, place).locator('[data-part="side"]').boundingBox();
			expect(side!.height).toBeGreaterThan(outer!.height * 0.3);
		}
		const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
		expect(over, `${width} px`).toBeLessThanOrEqual(0);
	}
});

test('axe finds nothing', async ({ page }) => {
	for (const lang of ['en', 'es']) {
		await page.goto(`/compare?lang=${lang}`);
		await ready(page);
		await expect(drawing(page, 1)).toBeVisible();
		await expect(drawing(page, 2)).toBeVisible();
		const { violations } = await new AxeBuilder({ page })
			.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
			.analyze();
		expect(violations.map(({ id, nodes }) => `${lang} ${id}: ${nodes[0]?.html}`)).toEqual([]);
	}
});

test('a drawing is kept for good, and its address takes nothing but a hash', async ({ page, request }) => {
	const asked = page.waitForRequest(/\/drawings\//);
	await page.goto('/compare');
	const url = new URL((await asked).url()).pathname;
	const answer = await request.get(url);
	expect(answer.headers()).toMatchObject({
		'content-type': 'application/json',
		'cache-control': 'public, max-age=31536000, immutable',
	});
	expect((await answer.body()).byteLength).toBeLessThan(40_000);
	const etag = answer.headers().etag;
	expect((await request.get(url, { headers: { 'if-none-match': etag } })).status()).toBe(304);
	for (const path of ['/drawings/x.json', `/drawings/${'0'.repeat(64)}.json`, '/drawings/..%2f..%2fx.json'])
		expect((await request.get(path)).status()).toBe(404);
});
