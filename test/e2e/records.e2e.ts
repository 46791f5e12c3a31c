import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { AxeBuilder } from './axe';
import { unzipSync } from 'fflate';
import { readArchive } from '../unit/server/darwinCore/readArchive';
import { asStaff, CONTENT, expect, ready, test } from './helpers';

// A curator takes the specimens out as a table, mends a title in it, and brings it back.

const LABEL = path.join(CONTENT, 'specimens', 'skm-0104', 'label.en.md');

test('a table comes back: first what it would change, then the change itself', async ({ page, request }) => {
	await asStaff(page);
	await asStaff(request);
	const before = await readFile(LABEL, 'utf8');
	const title = /^title: (.*)$/m.exec(before)![1];
	const table = await (await request.get('/desk/table.csv')).text();
	expect(table.split(title).length).toBe(2);
	const file = {
		name: 'teeth.csv',
		mimeType: 'text/csv',
		buffer: Buffer.from(table.replace(title, 'A name mended in a table')),
	};
	await page.goto('/desk/table');
	await ready(page);
	const said = page.getByRole('status');
	try {
		await page.locator('input[type=file]').setInputFiles(file);
		await expect(said).toHaveText(/^0 new · 1 changed · \d+ unchanged · 0 refused$/);
		const changed = page.locator('[data-outcome=changed]');
		await expect(changed).toContainText('SKM 0104');
		await expect(changed).toContainText(`“${title}”`);
		await expect(changed).toContainText('“A name mended in a table”');
		const { violations } = await new AxeBuilder({ page }).analyze();
		expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
		expect(await readFile(LABEL, 'utf8')).toBe(before);
		await page.screenshot({ path: 'test-results/desk-table.png', fullPage: true });

		// left out by its column, nothing would change; taken again, it would
		await page.getByLabel('Taken for: title_en').selectOption('');
		await expect(said).toHaveText(/^0 new · 0 changed/);
		await page.getByLabel('Taken for: title_en').selectOption('title_en');
		await expect(said).toHaveText(/1 changed/);

		await page.getByRole('button', { name: 'Write 1 file' }).click();
		await expect(said).toContainText('1 file written.');
		expect(await readFile(LABEL, 'utf8')).toBe(before.replace(title, 'A name mended in a table'));
	} finally {
		await writeFile(LABEL, before);
	}
});

test('a table with a mistake is refused row by row, with the reason', async ({ page }) => {
	await asStaff(page);
	await page.goto('/desk/table?lang=fr');
	await ready(page);
	const file = {
		name: 'dents.csv',
		mimeType: 'text/csv',
		// a French spreadsheet's own CSV: semicolons, Windows-1252
		buffer: Buffer.from('id;titre;title_fr\nskm-0104;é;=1+1\n', 'latin1'),
	};
	await page.locator('input[type=file]').setInputFiles(file);
	await expect(page.getByRole('status')).toHaveText('0 nouveau · 0 changé · 0 inchangé · 1 refusé');
	await expect(page.locator('[data-outcome=refused]')).toContainText('commence comme une formule');
	await expect(page.getByRole('button', { name: 'Rien à écrire' })).toBeDisabled();
	await page.setViewportSize({ width: 390, height: 844 });
	await page.screenshot({ path: 'test-results/desk-table-phone.png', fullPage: true });
	expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
});

test('the archive for other collections unpacks and reads back', async ({ request }) => {
	await asStaff(request);
	const response = await request.get('/desk/darwin-core');
	expect(response.headers()['content-type']).toBe('application/zip');
	const { core, extensions, metadata } = readArchive(unzipSync(new Uint8Array(await response.body())));
	expect(metadata).toBe('eml.xml');
	expect(core.rows.map((row) => row['http://rs.tdwg.org/dwc/terms/catalogNumber'])).toContain('SKM 0104');
	const ids = new Set(core.rows.map(({ id }) => id));
	expect(extensions.map(({ rows }) => rows.length > 0)).toEqual([true, true]);
	for (const { rows } of extensions) for (const { id } of rows) expect(ids).toContain(id);
	const media = extensions[1].rows[0];
	expect(media['http://rs.tdwg.org/ac/terms/hashValue']).toMatch(/^[0-9a-f]{64}$/);
});
