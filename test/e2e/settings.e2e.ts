import { AxeBuilder } from './axe';
import type { Page } from '@playwright/test';
import { allowFault, expect, ready, test } from './helpers';

const LANGUAGES = ['en', 'fr', 'es'];
const ROOMS = ['/', '/compare'];

/** Chooses settings as an earlier page of the same visit left them. */
async function chosen(page: Page, kept: Record<string, unknown>): Promise<void> {
	await page.addInitScript(
		(value) => sessionStorage.setItem('tooth-table-comfort', value),
		JSON.stringify(kept),
	);
}
const panel = (page: Page) => page.getByRole('dialog');
const option = (page: Page, setting: string, value: string) =>
	panel(page).locator(`[data-setting="${setting}"] [data-option="${value}"]`);

test('settings: by keyboard alone, announced, kept in every room, and back to usual', async ({ page }) => {
	await page.goto('/');
	await ready(page);
	const opener = page.getByRole('button', { name: 'Settings' });
	await opener.focus();
	await page.keyboard.press('Enter');
	await expect(panel(page)).toHaveAccessibleName('Make it suit you');
	const usual_px = await page.evaluate(() => Number.parseFloat(getComputedStyle(document.body).fontSize));

	// tab stays within the panel and reaches every option
	const reached = new Set<string>();
	for (let i = 0; i < 40; i += 1) {
		await page.keyboard.press('Tab');
		const where = await page.evaluate(() => {
			const at = document.activeElement;
			if (!at || at === document.body) return 'browser';
			return at.closest('dialog')
				? (at.textContent ?? '').trim() + (at.getAttribute('aria-label') ?? '')
				: 'outside';
		});
		expect(where).not.toBe('outside');
		reached.add(where);
	}
	for (const name of [
		'Larger',
		'Strong',
		'Calm',
		'Low down',
		'Off',
		'Quieter',
		'Louder',
		'Back to usual',
		'Done',
	])
		expect(
			[...reached].some((found) => found.includes(name)),
			name,
		).toBe(true);

	const said = panel(page).locator('[data-said]');
	await option(page, 'text', 'largest').press('Enter');
	await expect(said).toHaveText('Letters are twice as large.');
	const largest_px = await page.evaluate(() => Number.parseFloat(getComputedStyle(document.body).fontSize));
	expect(largest_px / usual_px).toBeCloseTo(2, 1);
	await option(page, 'contrast', 'high').press('Space');
	await expect(said).toHaveText('Contrast is strong.');
	await option(page, 'motion', 'calm').press('Enter');
	await expect(option(page, 'motion', 'calm')).toHaveAttribute('aria-pressed', 'true');
	await panel(page).getByRole('button', { name: 'Louder' }).press('Enter');
	await expect(said).toHaveText('Loudness 4/5');

	// Escape closes; the place where one was is not lost
	await page.keyboard.press('Escape');
	await expect(panel(page)).toHaveCount(0);
	await expect(opener).toBeFocused();

	await page.locator('[data-room="compare"]').click();
	await ready(page);
	await expect(page.locator('html')).toHaveAttribute('data-contrast', 'high');
	await page.reload();
	await ready(page);
	await expect(page.locator('html')).toHaveAttribute('data-text', 'largest');

	await page.getByRole('button', { name: 'Settings' }).press('Enter');
	await panel(page).getByRole('button', { name: 'Back to usual' }).press('Enter');
	await expect(said).toHaveText('Everything is back to usual.');
	await panel(page).getByRole('button', { name: 'Done' }).press('Enter');
	await expect(page.getByRole('button', { name: 'Settings' })).toBeFocused();
	await expect(page.locator('html')).toHaveAttribute('data-text', 'usual');
	expect(await page.evaluate(() => sessionStorage.getItem('tooth-table-comfort'))).toBeNull();
});

test('a device that asks for less movement and more contrast gets it, and may choose otherwise', async ({
	browser,
}) => {
	const context = await browser.newContext({ reducedMotion: 'reduce', contrast: 'more' });
	const page = await context.newPage();
	await page.goto('/');
	await ready(page);
	await expect(page.locator('html')).toHaveAttribute('data-motion', 'reduced');
	await expect(page.locator('html')).toHaveAttribute('data-contrast', 'high');
	await page.getByRole('button', { name: 'Settings' }).click();
	await option(page, 'motion', 'usual').click();
	await expect(page.locator('html')).toHaveAttribute('data-motion', 'usual');
	await context.close();
});

// each in the language that tries it hardest, or in another: colours and places do not differ from language to language
const LOOKS = {
	'large text': { lang: 'fr', kept: { textSize: 'largest' } },
	'high contrast': { lang: 'en', kept: { highContrast: true } },
	'low layout': { lang: 'es', kept: { lowReach: true } },
};
for (const [name, { lang, kept }] of Object.entries(LOOKS)) {
	test(`axe finds nothing with ${name}`, async ({ page }) => {
		await chosen(page, kept);
		for (const address of [...ROOMS, '/no-such-room']) {
			if (address === '/no-such-room') allowFault(page, /404/);
			await page.goto(`${address}?lang=${lang}`);
			await ready(page);
			const { violations } = await new AxeBuilder({ page })
				.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
				.analyze();
			expect(violations.map(({ id, nodes }) => `${address} ${id}: ${nodes[0]?.html}`)).toEqual([]);
		}
	});
}

test('the panel itself: axe finds nothing, and nothing runs over its edge', async ({ page }) => {
	await chosen(page, { textSize: 'largest' });
	for (const lang of LANGUAGES) {
		await page.goto(`/?lang=${lang}`);
		await ready(page);
		await page.locator('.settings').click();
		await expect(panel(page)).toBeVisible();
		const { violations } = await new AxeBuilder({ page }).include('dialog').analyze();
		expect(violations.map(({ id, nodes }) => `${lang} ${id}: ${nodes[0]?.html}`)).toEqual([]);
		const over = await panel(page).evaluate((dialog) => dialog.scrollWidth - dialog.clientWidth);
		expect(over, lang).toBeLessThanOrEqual(0);
		await page.keyboard.press('Escape');
	}
});

test("the system's own colours: what is chosen can be told from what is not", async ({ browser }) => {
	const context = await browser.newContext({ forcedColors: 'active' });
	const page = await context.newPage();
	await page.goto('/compare');
	await ready(page);
	const grounds = await page
		.getByRole('group', { name: 'How large the teeth are drawn' })
		.getByRole('button')
		.evaluateAll((buttons) =>
			buttons.map((button) => [
				button.getAttribute('aria-pressed'),
				getComputedStyle(button).backgroundColor,
			]),
		);
	const on = grounds.filter(([pressed]) => pressed === 'true').map(([, ground]) => ground);
	const off = grounds.filter(([pressed]) => pressed === 'false').map(([, ground]) => ground);
	expect(on).toHaveLength(1);
	for (const ground of off) expect(ground).not.toBe(on[0]);
	await context.close();
});
