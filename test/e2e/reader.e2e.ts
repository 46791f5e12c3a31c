import type { Page } from '@playwright/test';
import { contrast } from '../../src/lib/ui/contrast';
import { drawn, expect, ready, test, view } from './helpers';

// What those hear and do who go by keys or listen to a screen reader.

/** Goes on with Tab until an element matches; fails when the page has been gone through. */
async function tabTo(page: Page, selector: string, most = 80): Promise<void> {
	for (let i = 0; i < most; i += 1) {
		await page.keyboard.press('Tab');
		if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return;
	}
	throw new Error(`tabTo: ${selector} is not reached with Tab`);
}
const hex = (rgb: string): string =>
	`#${(rgb.match(/\d+/g) ?? [])
		.slice(0, 3)
		.map((part) => Number(part).toString(16).padStart(2, '0'))
		.join('')}`;

test('the whole journey with keys alone: start, two teeth, turning, another tooth, what differs, back', async ({
	page,
}) => {
	await page.goto('/');
	await ready(page);
	await page.keyboard.press('Tab');
	await expect(page.locator(':focus')).toHaveText('Skip to the content');
	await expect(page.locator(':focus')).toBeInViewport();
	await page.keyboard.press('Enter');
	await expect(page.locator('main')).toBeFocused();
	await tabTo(page, '[data-room="compare"]');
	await page.keyboard.press('Enter');
	await page.locator('.compare[data-ready]').waitFor();
	await drawn(page);

	await tabTo(page, '[role="application"]');
	await expect(view(page, 1)).toBeFocused();
	await page.keyboard.press('ArrowRight');
	await page.keyboard.press('+');
	await expect(view(page, 1)).toBeFocused();
	await tabTo(page, '[role="tab"][aria-selected="true"]');
	// the drawer is one stop; within it the arrows go on
	await tabTo(page, 'button[data-specimen]');
	for (let i = 0; i < 20; i += 1) {
		if ((await page.locator(':focus').getAttribute('aria-pressed')) === 'false') break;
		await page.keyboard.press('ArrowRight');
	}
	const id = await page.locator(':focus').getAttribute('data-specimen');
	await page.keyboard.press('Enter');
	await expect(page.locator('[data-place="1"]')).toHaveAttribute('data-specimen', String(id));
	await expect(page.locator(`button[data-specimen="${id}"]`)).toBeFocused();

	// back to the tabs, along them with the arrows, and into what differs
	for (let i = 0; i < 40; i += 1) {
		await page.keyboard.press('Shift+Tab');
		if (await page.evaluate(() => document.activeElement?.getAttribute('role') === 'tab')) break;
	}
	await page.keyboard.press('ArrowDown');
	await expect(page.getByRole('tab', { name: 'Tell me' })).toBeFocused();
	await expect(page.getByRole('status').filter({ hasText: 'The most telling difference' })).toHaveCount(1);
	await tabTo(page, '.differences li button');
	await page.keyboard.press('Enter');
	await expect(page.locator(':focus')).toHaveAccessibleName(/^Show me/);

	await page.keyboard.press('Home');
	await tabTo(page, '.home', 200);
	await page.keyboard.press('Enter');
	await page.locator('.start[data-ready]').waitFor();
});

test('each stop of the Tab key shows where one is, at 3:1 or better', async ({ page }) => {
	for (const address of ['/', '/compare']) {
		await page.goto(address);
		await ready(page);
		const ground = hex(await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor));
		for (let i = 0; i < 30; i += 1) {
			await page.keyboard.press('Tab');
			const at = await page.evaluate(() => {
				const element = document.activeElement;
				if (!element || element === document.body) return null;
				const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(element);
				return { outlineStyle, outlineWidth, outlineColor, html: element.outerHTML.slice(0, 90) };
			});
			if (!at) break;
			expect(at.outlineStyle, at.html).not.toBe('none');
			expect(Number.parseFloat(at.outlineWidth), at.html).toBeGreaterThanOrEqual(2);
			// WCAG 2.2, 1.4.11
			expect(contrast(hex(at.outlineColor), ground), at.html).toBeGreaterThanOrEqual(3);
		}
	}
});

test('the start screen as a screen reader finds it', async ({ page }) => {
	await page.goto('/');
	await ready(page);
	await expect(page.locator('body')).toMatchAriaSnapshot(`
    - button "Skip to the content"
    - banner:
      - paragraph: Skerrow Museum
      - button "Settings"
      - navigation "Choose a language":
        - link "English"
        - link "Français"
        - link "Español"
    - main:
      - heading "What can a tooth tell?" [level=1]
      - paragraph
      - navigation "Rooms":
        - link "Lay two teeth side by side"
      - region /Teeth from the museum's drawer/
  `);
});

test('the compare room as a screen reader finds it: each tooth by name, then its words', async ({ page }) => {
	await page.goto('/compare?teeth=skm-0104,skm-0131');
	await ready(page);
	await drawn(page);
	for (const place of [1, 2] as const) {
		const article = page.getByRole('article', { name: `Tooth ${place}` });
		const title = (await article.getByRole('heading', { level: 2 }).innerText()).replace(/\s+/g, ' ');
		const name = String(await view(page, place).getAttribute('aria-label'));
		expect(name.startsWith(title)).toBe(true);
		expect(name).toContain('Arrow keys turn it');
		await expect(article.getByRole('group', { name: `Turn: ${title}` }).getByRole('button')).toHaveCount(7);
		await expect(article.getByRole('region', { name: title })).toBeVisible();
	}
	await expect(page.getByRole('tablist')).toHaveCount(1);
	await expect(page.getByRole('tabpanel')).toHaveAccessibleName('The drawer');
	await expect(page.getByRole('main')).toHaveCount(1);
	await expect(page.getByRole('banner')).toHaveCount(1);
	await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1);
	// no level is left out on the way down
	const levels = await page
		.locator('h1, h2, h3, h4')
		.evaluateAll((headings) => headings.map(({ tagName }) => Number(tagName[1])));
	expect(levels[0]).toBe(1);
	levels.forEach((level, i) => expect(level - (levels[i - 1] ?? 0)).toBeLessThanOrEqual(1));
});
