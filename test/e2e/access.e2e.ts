import { AxeBuilder } from './axe';
import { allowFault, drawn, expect, ready, test, view } from './helpers';

const LANGUAGES = ['en', 'fr', 'es'];

test('axe finds nothing', async ({ page }, { project }) => {
	// every language on one screen; on the others the one with the longest words
	for (const lang of project.name === 'landscape' ? LANGUAGES : ['fr'])
		for (const address of ['/', '/compare', '/no-such-room']) {
			if (address === '/no-such-room') allowFault(page, /404/);
			await page.goto(`${address}?lang=${lang}`);
			await ready(page);
			await expect(page.locator('html')).toHaveAttribute('lang', lang);
			const { violations } = await new AxeBuilder({ page })
				.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
				.analyze();
			expect(violations.map(({ id, nodes }) => `${address} ${lang} ${id}: ${nodes[0]?.html}`)).toEqual([]);
		}
});

test('every control is at least 44 px, the primary ones 20 mm on the gallery screen', async ({ page }) => {
	const wide = (page.viewportSize()?.width ?? 0) > 640;
	const primary_px = wide ? 20 * (Math.hypot(1920, 1080) / (32 * 25.4)) : 44;
	for (const address of ['/', '/compare']) {
		await page.goto(address);
		await ready(page);
		const small = await page.locator('a, button').evaluateAll((elements) =>
			elements
				.map((element) => ({ box: element.getBoundingClientRect(), html: element.outerHTML.slice(0, 90) }))
				.filter(({ box }) => box.width > 0 && (box.height < 43.9 || box.width < 43.9))
				.map(({ box, html }) => `${Math.round(box.width)} x ${Math.round(box.height)} ${html}`),
		);
		expect(small).toEqual([]);
	}
	const turn = await page.locator('.buttons button').first().boundingBox();
	expect(turn?.width).toBeGreaterThanOrEqual(primary_px - 0.5);
	expect(turn?.height).toBeGreaterThanOrEqual(primary_px - 0.5);
});

test('nothing runs over the edge of the screen', async ({ page }) => {
	for (const address of ['/', '/compare'])
		for (const lang of LANGUAGES) {
			await page.goto(`${address}?lang=${lang}`);
			await ready(page);
			const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
			expect(over, `${address} ${lang}`).toBeLessThanOrEqual(0);
		}
});

test('a screen reader hears each tooth, how to turn it, and where the next one goes', async ({ page }) => {
	await page.goto('/compare');
	await ready(page);
	await drawn(page);
	const title = await page.locator('[data-place="1"] h2').innerText();
	const name = String(await view(page, 1).getAttribute('aria-label'));
	expect(name.startsWith(title)).toBe(true);
	expect(name).toContain('Arrow keys turn it');
	await expect(page.getByRole('status')).toHaveText('The next tooth you touch goes to place 1');
	await page.locator('[data-specimen][aria-pressed="false"]').first().press('Enter');
	const laid = await page.locator('[data-place="1"] h2').innerText();
	await expect(page.getByRole('status')).toHaveText(
		new RegExp(`^${laid} lies in place 1\\. .+ went back to the drawer\\. The next tooth .+ place 2$`),
	);
	await expect(page.locator('main > .unseen')).toHaveText(
		new RegExp(`^On the table: 1: ${laid} and 2: .+\\.$`),
	);
});

test('words are in the language chosen, and the table stays as it was', async ({ page }) => {
	await page.goto('/compare');
	await ready(page);
	await page.locator('[data-specimen][aria-pressed="false"]').nth(2).press('Enter');
	const id = await page.locator('[data-place="1"]').getAttribute('data-specimen');
	const english = await page.locator('[data-place="1"] h2').innerText();
	await page.locator('a[hreflang="fr"]').click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Deux dents en main');
	await expect(page.locator('html')).toHaveAttribute('lang', 'fr');
	await expect(page.locator('[data-place="1"]')).toHaveAttribute('data-specimen', String(id));
	await expect(page.locator('[data-place="1"] h2')).not.toHaveText(english);
	await page.locator('a[hreflang="es"]').click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Dos dientes en la mano');
});
