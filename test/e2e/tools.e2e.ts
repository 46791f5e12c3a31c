import { AxeBuilder } from './axe';
import type { Page } from '@playwright/test';
import { asStaff, changed, drawn, expect, pixels, ready, test, view } from './helpers';

const take = async (page: Page, tool: string) => {
	await page.locator(`[data-tool="${tool}"]`).tap();
	await drawn(page);
};
const axe = async (page: Page) => {
	const { violations } = await new AxeBuilder({ page }).analyze();
	expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
};
const number = (words: string) => Number(/[\d,.]+/.exec(words)?.[0].replace(',', ''));

test.describe('tools on the table', () => {
	test.beforeEach(async ({ page }) => {
		await page.goto('/compare?teeth=skm-0143,skm-0112');
		await ready(page);
		await drawn(page);
		await page.getByRole('tab', { name: 'Tools' }).tap();
	});

	test('both teeth are cut at one height; sections and figures follow', async ({ page }) => {
		const whole = await pixels(view(page, 1));
		await take(page, 'cut');
		const half = await pixels(view(page, 1));
		expect(changed(whole, half)).toBeGreaterThan(0.02);
		const area = (place: number) =>
			page.locator(`[data-section="${place}"]:visible [data-figure="tool_cut_area"] dd`).first();
		const before = [number(await area(1).innerText()), number(await area(2).innerText())];
		const slider = page.getByRole('slider', { name: 'Where to cut' });
		await slider.focus();
		for (let i = 0; i < 20; i += 1) await slider.press('ArrowRight');
		await drawn(page);
		await expect(page.locator('[data-cut-at]')).toHaveText('70 % up the crown');
		// crowns taper: less is left higher up
		expect(number(await area(1).innerText())).toBeLessThan(before[0]);
		expect(number(await area(2).innerText())).toBeLessThan(before[1]);
		await page.getByRole('button', { name: 'Cut lower' }).tap();
		await expect(page.locator('[data-cut-at]')).toHaveText('65 % up the crown');
		await page.getByRole('button', { name: 'Same mm' }).tap();
		await expect(page.locator('[data-cut-at]')).toHaveText(/^[\d.]+ mm above the base$/);
		await axe(page);
		await take(page, 'cut');
		await expect(page.locator('[data-section]')).toHaveCount(0);
	});

	test('a caliper reads from end to end, by keys and by a drag', async ({ page }) => {
		await take(page, 'caliper');
		const reading = page.locator('[data-place="1"] .reading');
		const first = number(await reading.innerText());
		expect(first).toBeGreaterThan(1);
		const end = page.locator('[data-place="1"] [data-end="b"]');
		await end.focus();
		for (let i = 0; i < 3; i += 1) await end.press('Shift+ArrowUp');
		await expect.poll(async () => number(await reading.innerText())).toBeLessThan(first);
		const box = (await end.boundingBox())!;
		const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
		const middle = (await view(page, 1).boundingBox())!;
		const before = await reading.innerText();
		await page.mouse.move(x, y);
		await page.mouse.down();
		for (let i = 1; i <= 8; i += 1)
			await page.mouse.move(
				x + ((middle.x + middle.width / 2 - x) * i) / 16,
				y + ((middle.y + middle.height / 2 - y) * i) / 16,
			);
		await page.mouse.up();
		await expect(reading).not.toHaveText(before);
		// the tooth itself has not turned; what is read is said
		await expect(page.locator('[data-caliper-said]')).toContainText(
			/Tooth 1: [\d.]+ mm\. Tooth 2: [\d.]+ mm\./,
		);
		// turned round, an end lies behind and says so
		const turn = page.locator('[data-place="1"]').getByRole('button', { name: 'Turn left' });
		for (let i = 0; i < 12; i += 1) await turn.tap();
		await drawn(page);
		await expect(page.locator('[data-place="1"] button[data-end].behind').first()).toHaveAccessibleName(
			/behind the tooth/,
		);
		await axe(page);
	});

	test('outlines laid over each other tell what they share', async ({ page }) => {
		await take(page, 'overlay');
		const figure = page.locator('[data-overlay]');
		await expect(figure).toContainText('is covered by both');
		const share = Number(await figure.getAttribute('data-overlay'));
		expect(share).toBeGreaterThan(0);
		expect(share).toBeLessThan(100);
		const sheet = page.locator('.sheet');
		await sheet.getByRole('button', { name: 'Same height' }).tap();
		await expect(figure).not.toHaveAttribute('data-overlay', String(share));
		await axe(page);
		await sheet.getByRole('button', { name: 'Put the outlines away' }).tap();
		await expect(figure).toHaveCount(0);
	});

	test('a hand or a grain of rice lies beside the teeth', async ({ page }) => {
		await take(page, 'size');
		await expect(page.locator('[data-size-figure]')).toBeVisible();
		await page.getByRole('button', { name: 'Rice' }).tap();
		await expect(page.locator('[data-size-figure="rice"]')).toBeVisible();
		await expect(page.getByText('about 7 mm')).toBeVisible();
		await axe(page);
	});
});

test('staff measure the screen with a card; teeth are then drawn at life size', async ({ page }) => {
	await page.goto('/compare');
	await ready(page);
	await expect(page.getByRole('button', { name: 'Life size' })).toHaveCount(0);
	await asStaff(page);
	await page.goto('/desk/screen');
	await ready(page);
	const edge = page.getByRole('slider', { name: 'Right edge' });
	await edge.focus();
	// the card is 340 px wide on this screen
	const at = async () => Number(await page.locator('[data-drawn-px]').getAttribute('data-drawn-px'));
	while ((await at()) < 335) await edge.press('Shift+ArrowRight');
	while ((await at()) > 340) await edge.press('ArrowLeft');
	while ((await at()) < 340) await edge.press('ArrowRight');
	await axe(page);
	await page.getByRole('button', { name: 'Keep this' }).click();
	await expect(page.getByText('Life size is offered on this screen')).toBeVisible();
	const check = (await page.locator('[data-check]').boundingBox())!;
	expect(check.width / ((340 / 85.6) * 50)).toBeCloseTo(1, 2);

	await page.goto('/compare?teeth=skm-0143,skm-0112');
	await ready(page);
	await drawn(page);
	await page.getByRole('button', { name: 'Life size' }).click();
	await drawn(page);
	const bars = page.locator('[data-place] .scale');
	for (const bar of await bars.all()) {
		const mm = number(await bar.innerText());
		const line = (await bar.locator('.line').boundingBox())!;
		expect(Math.abs(line.width / mm / (340 / 85.6) - 1)).toBeLessThan(0.01);
	}
	await page.goto('/desk/screen');
	await page.getByRole('button', { name: 'Forget it' }).click();
	await page.goto('/compare');
	await ready(page);
	await expect(page.getByRole('button', { name: 'Life size' })).toHaveCount(0);
});
