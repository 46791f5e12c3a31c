import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { APIRequestContext, Page } from '@playwright/test';
import { AxeBuilder } from './axe';
import { asStaff, CONTENT, expect, ready, test } from './helpers';

// A curator at the desk: a typo, a broken file, somebody else's change, undo, order, a draft.

const ID = 'skm-0104';
const LABEL = path.join(CONTENT, 'specimens', ID, 'label.en.md');
const FACTS = path.join(CONTENT, 'specimens', ID, 'specimen.yaml');
const EXHIBIT = path.join(CONTENT, 'exhibit.yaml');

const health = async (request: APIRequestContext) =>
	(await (await request.get('/healthz')).json()) as { ok: boolean; problems: { errors: number } };
const news = (page: Page) => page.locator('[data-save]');
const save = (page: Page) => page.getByRole('button', { name: 'Save', exact: true });
const editor = (page: Page) => page.getByRole('textbox', { name: /^Text of / });

/** Runs with the files as they are, and puts them back. */
async function keeping(files: string[], run: () => Promise<void>): Promise<void> {
	const before = await Promise.all(files.map((file) => readFile(file, 'utf8')));
	try {
		await run();
	} finally {
		await Promise.all(files.map((file, i) => writeFile(file, before[i])));
	}
}

test.beforeEach(({ page }) => asStaff(page));

test('a typo mended at the desk shows in the room beside it, then on the screens, and can be undone', async ({
	page,
	request,
}) => {
	await keeping([LABEL], async () => {
		const before = await readFile(LABEL, 'utf8');
		const mended = 'A name mended: this morning';
		const onScreens = async () => (await (await request.get(`/compare?teeth=${ID}`)).text()).includes(mended);
		await page.goto(`/desk/specimen/${ID}`);
		await ready(page);
		const title = page.locator('[data-field="title"][data-lang="en"] textarea');
		const old = await title.inputValue();
		await title.fill(mended);
		// the room in the frame, not the screens in the gallery
		await expect(page.frameLocator('iframe').locator('[data-place="1"] h2')).toHaveText(mended, {
			timeout: 30_000,
		});
		expect(await onScreens()).toBe(false);
		await page.keyboard.press('Control+s');
		await expect(news(page)).toHaveAttribute('data-save', 'saved');
		await expect.poll(onScreens).toBe(true);
		expect(await readFile(LABEL, 'utf8')).toBe(before.replace(/^title: .*$/m, `title: "${mended}"`));

		await page.getByRole('button', { name: 'Undo this save' }).click();
		await expect(title).toHaveValue(old);
		await expect.poll(onScreens).toBe(false);
		expect(await readFile(LABEL, 'utf8')).toBe(before);
	});
});

test('a mistake is told at its line while one types; saved all the same, the exhibit still stands', async ({
	page,
	request,
}) => {
	await keeping([FACTS], async () => {
		await page.goto(`/desk/edit?file=specimens/${ID}/specimen.yaml&line=4`);
		await ready(page);
		await expect(editor(page)).toBeFocused();
		// the cursor stands on the line that was asked for
		await page.keyboard.type('grupo: x # ');
		const problem = page.locator('aside button').first();
		await expect(problem).toContainText('Mistake, line 4');
		await expect(page.locator('.notes').first()).toContainText('"grupo" is not known here');
		await save(page).click();
		await expect(news(page)).toHaveAttribute('data-save', 'errors');
		expect((await health(request)).problems.errors).toBe(0);
		await page.getByRole('button', { name: 'Save all the same' }).click();
		await expect(news(page)).toHaveAttribute('data-save', 'saved');
		await expect.poll(async () => (await health(request)).problems.errors).toBeGreaterThan(0);
		expect((await health(request)).ok).toBe(true);

		await page.goto('/desk/problems');
		await ready(page);
		const found = page.locator(`[data-file="specimens/${ID}/specimen.yaml"] [data-severity="error"]`);
		await expect(found.first()).toContainText('line 4');
		await page.goto(`/compare?teeth=${ID}`);
		await ready(page);
		await expect(page.locator('[data-place="1"]')).toHaveAttribute('data-specimen', ID);

		// the way back leads through the history
		await page.goto(`/desk/history?of=specimens/${ID}/`);
		await ready(page);
		await page.locator('[data-version] a').first().click();
		await expect(page.locator('del').first()).toBeVisible();
		await page.getByRole('button', { name: 'Undo this change' }).click();
		await expect(news(page)).toHaveAttribute('data-save', 'saved');
		await expect.poll(async () => (await health(request)).problems.errors).toBe(0);
	});
});

test('what somebody else changed meanwhile is not written over: both are shown, and can be put together', async ({
	page,
}) => {
	await keeping([LABEL], async () => {
		await page.goto(`/desk/edit?file=specimens/${ID}/label.en.md&line=2`);
		await ready(page);
		await expect(editor(page)).toBeFocused();
		await page.keyboard.type('title: Typed at the desk # ');
		const theirs = (await readFile(LABEL, 'utf8')).replace('What we see.', 'What they wrote.');
		await writeFile(LABEL, theirs);
		await page.keyboard.press('Control+s');
		await expect(news(page)).toHaveAttribute('data-save', 'clash');
		await expect(page.locator('[data-side="theirs"] ins').last()).toContainText('wrote');
		await expect(page.locator('[data-side="ours"]')).toContainText('Typed at the desk');
		expect(await readFile(LABEL, 'utf8')).toBe(theirs);
		await page.getByRole('button', { name: 'Save both' }).click();
		await expect(news(page)).toHaveAttribute('data-save', 'saved');
		const both = await readFile(LABEL, 'utf8');
		expect(both).toContain('What they wrote.');
		expect(both).toContain('Typed at the desk');
	});
});

test('by keys a room changes its place on the start screen; a draft is not in the room', async ({
	page,
	request,
}) => {
	await keeping([EXHIBIT, FACTS], async () => {
		await page.goto('/desk/order');
		await ready(page);
		const grip = page.locator('[data-item="feeding"] [data-what="grip"]');
		await grip.focus();
		await grip.press('ArrowUp');
		await expect(page.locator('[data-told]')).toContainText('place 1 of');
		await expect(grip).toBeFocused();
		await save(page).click();
		await expect(news(page)).toHaveAttribute('data-save', 'saved');
		expect(await readFile(EXHIBIT, 'utf8')).toContain('rooms: [feeding, compare,');

		await page.goto(`/desk/specimen/${ID}`);
		await ready(page);
		await page.getByRole('button', { name: 'Facts', exact: true }).click();
		await page.getByRole('radio', { name: 'do not see it (draft)' }).check();
		await save(page).click();
		await expect(news(page)).toHaveAttribute('data-save', 'saved');
		await page.goto('/desk');
		await expect(page.locator(`tr[data-specimen="${ID}"]`)).toContainText('draft');
		expect(await (await request.get('/compare')).text()).not.toContain(`data-specimen="${ID}"`);
	});
	await expect.poll(async () => (await health(request)).problems.errors).toBe(0);
});

const PAGES = [
	'/desk',
	'/desk/problems',
	'/desk/edit',
	`/desk/edit?file=specimens/${ID}/label.en.md`,
	`/desk/specimen/${ID}`,
	'/desk/order',
	'/desk/history',
];

test('axe finds nothing on the pages, and no word is missing in the other languages', async ({ page }) => {
	for (const address of PAGES) {
		const at = (lang: string) => `${address}${address.includes('?') ? '&' : '?'}lang=${lang}`;
		await page.goto(at('en'));
		await ready(page);
		const { violations } = await new AxeBuilder({ page })
			.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
			.exclude('iframe')
			.analyze();
		expect(violations.map(({ id, nodes }) => `${address} ${id}: ${nodes[0]?.html}`)).toEqual([]);
		for (const lang of ['fr', 'es']) {
			await page.goto(at(lang));
			await ready(page);
			expect(await page.locator('main').innerText(), at(lang)).not.toMatch(/\bdesk_\w+/);
			expect(
				await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
			).toBeLessThanOrEqual(0);
		}
	}
});
