import { readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { CONTENT, drawn, expect, ready, test, touchDrag, view } from './helpers';

const health = async (request: import('@playwright/test').APIRequestContext) =>
	(await (await request.get('/healthz')).json()) as { ok: boolean; problems: { errors: number } };

test('a saved label shows on the screen without a reload, and the visitor loses nothing', async ({
	page,
}) => {
	await page.goto('/compare');
	await ready(page);
	await drawn(page);
	await touchDrag(page, view(page, 1), 120, 0);
	await page.evaluate(() => ((window as unknown as { kept: boolean }).kept = true));
	const id = String(await page.locator('[data-place="1"]').getAttribute('data-specimen'));
	const file = path.join(CONTENT, 'specimens', id, 'label.en.md');
	const before = await readFile(file, 'utf8');
	try {
		const saved = Date.now();
		await writeFile(file, before.replace(/^title: .*$/m, 'title: A name mended this morning'));
		await expect(page.locator('[data-place="1"] h2')).toHaveText('A name mended this morning', {
			timeout: 3000,
		});
		expect(Date.now() - saved).toBeLessThan(3000);
		expect(await page.evaluate(() => (window as unknown as { kept?: boolean }).kept)).toBe(true);
		await expect(view(page, 1)).toHaveAttribute('data-drawn', 'true');
	} finally {
		await writeFile(file, before);
	}
	await expect(page.locator('[data-place="1"] h2')).not.toHaveText('A name mended this morning');
});

test('a broken file is explained and the last good version stays on screen', async ({ page, request }) => {
	await page.goto('/compare');
	await ready(page);
	const id = String(await page.locator('[data-place="2"]').getAttribute('data-specimen'));
	const title = await page.locator('[data-place="2"] h2').innerText();
	const file = path.join(CONTENT, 'specimens', id, 'specimen.yaml');
	const before = await readFile(file, 'utf8');
	expect((await health(request)).problems.errors).toBe(0);
	try {
		await writeFile(file, before.replace('group:', 'grupo:'));
		await expect.poll(async () => (await health(request)).problems.errors).toBeGreaterThan(0);
		await expect(page.locator('[data-place="2"] h2')).toHaveText(title);
		await page.reload();
		await ready(page);
		await expect(page.locator('[data-place="2"] h2')).toHaveText(title);
		expect((await health(request)).ok).toBe(true);
	} finally {
		await writeFile(file, before);
	}
	await expect.poll(async () => (await health(request)).problems.errors).toBe(0);
});

test('a new specimen is a copied folder', async ({ page, request }) => {
	await page.goto('/compare');
	await ready(page);
	const count = await page.locator('button[data-specimen]').count();
	const from = path.join(CONTENT, 'specimens', 'skm-0104');
	const to = path.join(CONTENT, 'specimens', 'skm-0999');
	const { cp } = await import('node:fs/promises');
	try {
		await cp(from, to, { recursive: true });
		const facts = path.join(to, 'specimen.yaml');
		await writeFile(facts, (await readFile(facts, 'utf8')).replace('SKM 0104', 'SKM 0999'));
		await expect(page.locator('button[data-specimen="skm-0999"]')).toBeVisible();
		await expect(page.locator('button[data-specimen]')).toHaveCount(count + 1);
		expect((await health(request)).problems.errors).toBe(0);
	} finally {
		await rm(to, { recursive: true, force: true });
	}
	await expect(page.locator('button[data-specimen]')).toHaveCount(count);
});

test('a script in a label comes out harmless', async ({ page }) => {
	const id = 'skm-0104';
	const file = path.join(CONTENT, 'specimens', id, 'label.en.md');
	const before = await readFile(file, 'utf8');
	try {
		await writeFile(
			file,
			`${before}\n\n<script>window.harmed = true</script> <img src=x onerror="window.harmed = true"> [go](javascript:harmed=true) Mended words.\n`,
		);
		await page.goto(`/compare?teeth=${id}`);
		await expect(page.locator('[data-place="1"] .label')).toContainText('Mended words.');
		expect(await page.evaluate(() => (window as unknown as { harmed?: boolean }).harmed)).toBeUndefined();
		await expect(page.locator('.label script, .label img, .label a')).toHaveCount(0);
	} finally {
		await writeFile(file, before);
	}
});
