import { readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { sculpt } from '../../src/lib/domain/tooth/sculpt';
import { AxeBuilder } from './axe';
import { asStaff, CONTENT, expect, ready, test } from './helpers';

// A curator's afternoon at the desk, with a gallery screen open beside it.

const ID = 'skm-9300';
const FOLDER = path.join(CONTENT, 'specimens', ID);

/** A crown as a scanner leaves it, STL. */
function scanFile(): Buffer {
	const sculpted = sculpt(
		{
			crownHeight_mm: 31,
			baseLength_mm: 17,
			baseWidth_mm: 13,
			sections: [{ at: 0, shape: 'oval' }],
			taper: 'bullet',
			curve: { distal_deg: 14, lingual_deg: 4, startsAt: 0.2 },
			tipRadius_mm: 0.9,
			carinae: [],
			root: { state: 'none' },
		},
		{ detail: 'draft' },
	);
	if (!sculpted.ok) throw new Error(JSON.stringify(sculpted.problem));
	const { positions, indices } = sculpted.value.mesh;
	const file = Buffer.alloc(84 + (indices.length / 3) * 50);
	file.writeUInt32LE(indices.length / 3, 80);
	for (let k = 0; k < indices.length; k += 1) {
		const at = 84 + Math.floor(k / 3) * 50 + 12 + (k % 3) * 12;
		for (let axis = 0; axis < 3; axis += 1)
			file.writeFloatLE(positions[indices[k] * 3 + axis], at + axis * 4);
	}
	return file;
}

const health = async (page: Page) =>
	(await (await page.request.get('/healthz')).json()) as { ok: boolean; problems: { errors: number } };
const save = async (page: Page) => {
	await page.getByRole('button', { name: 'Save', exact: true }).click();
	await expect(page.locator('[data-save="saved"]')).toBeVisible();
};

test('a new specimen from its scan to the gallery, a slip and its undoing, a language, a table', async ({
	page,
	context,
}) => {
	test.setTimeout(120_000);
	const exhibitFile = path.join(CONTENT, 'exhibit.yaml');
	const exhibit = await readFile(exhibitFile, 'utf8');
	const words = path.join(CONTENT, 'ui', 'de.yaml');
	const gallery = await context.newPage();
	const inDrawer = gallery.locator(`button[data-specimen="${ID}"]`);
	const title = gallery.locator('[data-place="1"] h2');
	try {
		await asStaff(page);
		await gallery.goto('/compare');
		await ready(gallery);

		await page.goto('/desk');
		await ready(page);
		await page.getByRole('link', { name: 'Add a specimen' }).click();
		await page.getByRole('heading', { level: 1, name: 'Add a specimen' }).waitFor();
		// what is lacking is said, and the first of it is at hand
		await page.getByRole('button', { name: 'Add as a draft' }).click();
		await expect(page.getByLabel('Number, as on the box')).toBeFocused();
		await page.keyboard.type('SKM 9300');
		await expect(page.getByLabel('Name of its folder')).toHaveValue(ID);
		await page.getByLabel('Animal or group').selectOption('mosasaurus');
		await page.getByLabel('What it is a part of').selectOption('crown');
		await page.getByLabel('Colour').selectOption('tan');
		await page.getByLabel('Bed of rock').selectOption('upper-marl');
		await page.getByLabel('How sure').selectOption('likely');
		await page.getByLabel('Title').fill('Crown with a tpyo');
		await page.getByLabel('Short line').fill('Scanned this afternoon');
		await page.getByLabel('Licence').selectOption('http://creativecommons.org/licenses/by/4.0/');

		// no scan by its bytes, whatever its name; then the real one
		const chooser = page.locator('#desk-new-scan-file');
		await chooser.setInputFiles({
			name: 'tooth.stl',
			mimeType: '',
			buffer: Buffer.from('%PDF-1.7 a letter'),
		});
		await expect(page.locator('[data-scan="refused"]')).toContainText('PDF');
		await chooser.setInputFiles({ name: 'Scan 12 (final).stl', mimeType: '', buffer: scanFile() });
		await expect(page.locator('[data-scan="there"]')).toContainText('STL');
		await page.getByLabel('Crown height on its card').fill('31');
		await page.getByRole('radio', { name: 'Inches' }).check();
		await expect(page.getByText('Was it “Millimetres”?')).toBeVisible();
		await page.getByRole('radio', { name: 'Millimetres' }).check();
		await expect(page.getByText('This makes the crown 31 mm tall.')).toBeVisible();
		const { violations } = await new AxeBuilder({ page })
			.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
			.analyze();
		expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
		await page.getByRole('button', { name: 'Add as a draft' }).click();

		// a draft: measured and at the desk, but nowhere else
		await page.waitForURL(`**/desk/specimen/${ID}**`);
		const deskSays = async (words: string) =>
			(await (await page.request.get('/desk')).text()).includes(words);
		await expect.poll(() => deskSays('SKM 9300'), { timeout: 30_000 }).toBe(true);
		expect((await health(page)).problems.errors).toBe(0);
		for (const address of ['/', '/compare'])
			expect((await (await page.request.get(address)).text()).includes(ID), address).toBe(false);
		await expect(inDrawer).toHaveCount(0);

		// published, it comes into the open gallery
		await page.getByRole('button', { name: 'Facts', exact: true }).click();
		await page.getByRole('radio', { name: 'see it', exact: true }).check();
		await save(page);
		await expect(inDrawer).toHaveCount(1, { timeout: 30_000 });
		await inDrawer.press('Enter');
		await expect(title).toHaveText('Crown with a tpyo');

		// the typo
		await page.getByRole('button', { name: 'Words', exact: true }).click();
		await page.locator('#desk-title-en').fill('Crown without a typo');
		await save(page);
		await expect(title).toHaveText('Crown without a typo');

		// a slip in a text editor: told with its line, and the gallery keeps what it had
		const facts = path.join(FOLDER, 'specimen.yaml');
		const good = await readFile(facts, 'utf8');
		await writeFile(facts, good.replace('part:', 'prat:'));
		await page.goto('/desk/problems');
		const told = page.locator(`[data-file="specimens/${ID}/specimen.yaml"]`);
		await expect(told).toContainText('"prat" is not known here');
		const line = good.split('\n').findIndex((one) => one.startsWith('part:')) + 1;
		await expect(told.getByRole('link', { name: `line ${line}` }).first()).toBeVisible();
		await expect(title).toHaveText('Crown without a typo');
		// undone from the history
		await expect(async () => {
			await page.goto('/desk/history');
			await expect(page.locator('[data-version]').first()).toContainText('in a text editor', {
				timeout: 500,
			});
		}).toPass({ timeout: 15_000 });
		await page.locator('[data-version] a').first().click();
		await page.getByRole('button', { name: 'Undo this change' }).click();
		await expect(page.locator('[data-save="saved"]')).toBeVisible();
		expect(await readFile(facts, 'utf8')).toBe(good);
		await expect.poll(async () => (await health(page)).problems.errors).toBe(0);

		// a language, by files alone
		await writeFile(
			words,
			'start_title: Was erzählt ein Zahn?\nto_start: Zum Anfang\ndrawer_previous: Weiter vorn\n',
		);
		await writeFile(
			exhibitFile,
			exhibit.replace(/^languages:\n(?: {2}.*\n)+/m, '$&  - code: de\n    name: Deutsch\n'),
		);
		await expect(gallery.getByRole('link', { name: 'Deutsch' })).toHaveCount(1);

		// the table out, a title changed in it, and in again
		const csv = await (await page.request.get('/desk/table.csv')).text();
		expect(csv).toContain('Crown without a typo');
		await page.goto('/desk/table');
		await ready(page);
		await page.locator('input[type=file]').setInputFiles({
			name: 'table.csv',
			mimeType: 'text/csv',
			buffer: Buffer.from(csv.replace('Crown without a typo', 'Crown from a spreadsheet')),
		});
		await page.getByRole('button', { name: 'Write 1 file' }).click();
		await expect(title).toHaveText('Crown from a spreadsheet');
	} finally {
		await rm(FOLDER, { recursive: true, force: true });
		await writeFile(exhibitFile, exhibit);
		await rm(words, { force: true });
		await gallery.close();
	}
	await expect.poll(async () => (await health(page)).problems.errors).toBe(0);
	await expect.poll(async () => (await (await page.request.get('/desk')).text()).includes(ID)).toBe(false);
});
