import { AxeBuilder } from './axe';
import { changed, drawn, expect, pixels, ready, test, view } from './helpers';

test.beforeEach(async ({ page }) => {
	await page.goto('/compare?teeth=skm-0143,skm-0112');
	await ready(page);
	await drawn(page);
});

test('what differs, the most telling first, and shown on the teeth', async ({ page }) => {
	await page.getByRole('tab', { name: 'Tell me' }).tap();
	const entries = page.locator('.differences ol li');
	await expect(entries.first()).toBeVisible();
	const count = await entries.count();
	expect(count).toBeGreaterThanOrEqual(4);
	for (const sentence of await page.locator('.differences .sentence').allInnerTexts())
		expect(sentence).toMatch(/^[^{}]{12,}\.$/);
	const before = await pixels(view(page, 1));
	// some entry is seen in another view than the one shown now
	let most = 0;
	for (let i = 0; i < Math.min(count, 4); i += 1) {
		await entries.nth(i).getByRole('button').tap();
		await drawn(page);
		most = Math.max(most, changed(before, await pixels(view(page, 1))));
	}
	expect(most).toBeGreaterThan(0.02);
	await page.getByRole('button', { name: 'How they are alike' }).tap();
	await expect(page.locator('.differences')).toContainText(/\w/);
	const { violations } = await new AxeBuilder({ page }).analyze();
	expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
});

test('both teeth turn to each of the six trade views', async ({ page }) => {
	await page.getByRole('tab', { name: 'Look along' }).tap();
	let last = await pixels(view(page, 2));
	for (const name of ['Apical', 'Basal', 'Mesial', 'Lingual']) {
		const button = page.getByRole('button', { name: new RegExp(`^${name}`) });
		await button.tap();
		await expect(button).toHaveAttribute('aria-pressed', 'true');
		await drawn(page);
		const now = await pixels(view(page, 2));
		expect(changed(last, now), name).toBeGreaterThan(0.02);
		last = now;
	}
});

test('a marked feature turns into view with its name', async ({ page }) => {
	const pane = page.locator('[data-place="1"]');
	const chips = pane.locator('.features button');
	const count = await chips.count();
	expect(count).toBeGreaterThan(1);
	const box = await view(page, 1).boundingBox();
	if (!box) throw new Error('no view');
	for (let i = 0; i < count; i += 1) {
		await chips.nth(i).tap();
		await drawn(page);
		const pin = pane.locator('.pin');
		await expect(pin).toBeVisible();
		await expect(pin).toHaveText(await chips.nth(i).innerText());
		const at = await pin.boundingBox();
		expect(at?.x).toBeGreaterThan(box.x);
		expect(at?.x).toBeLessThan(box.x + box.width);
		expect(at?.y).toBeGreaterThan(box.y);
		expect(at?.y).toBeLessThan(box.y + box.height);
	}
	await chips.last().tap();
	await expect(pane.locator('.pin')).toHaveCount(0);
});

test('the shelf by keyboard: tabs by arrows, their contents by Tab', async ({ page }) => {
	await page.getByRole('tab', { name: 'The drawer' }).focus();
	await page.keyboard.press('ArrowDown');
	await expect(page.getByRole('tab', { name: 'Tell me' })).toBeFocused();
	await expect(page.locator('.differences ol')).toBeVisible();
	await page.keyboard.press('ArrowDown');
	await expect(page.locator('[data-tool="cut"]')).toBeVisible();
	await page.keyboard.press('ArrowDown');
	await expect(page.getByRole('tab', { name: 'Look along' })).toHaveAttribute('aria-selected', 'true');
	await page.keyboard.press('Tab');
	await expect(page.getByRole('button', { name: /^Labial/ })).toBeFocused();
	await page.keyboard.press('Enter');
	await expect(page.getByRole('button', { name: /^Labial/ })).toHaveAttribute('aria-pressed', 'true');
});
