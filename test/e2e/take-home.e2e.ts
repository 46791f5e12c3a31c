import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Locator } from '@playwright/test';
import sharp from 'sharp';
import { readQr, textOf } from '../unit/ui/readQr';
import { CONTENT, expect, ready, test } from './helpers';

const file = path.join(CONTENT, 'exhibit.yaml');
let before = '';
test.beforeAll(async () => {
	before = await readFile(file, 'utf8');
});
test.afterAll(async () => {
	await writeFile(file, before);
});

/** What a camera would read off an element: the picture on screen, cut into modules. */
async function readOff(target: Locator): Promise<string> {
	const size = Number(await target.getAttribute('data-qr'));
	const { data, info } = await sharp(await target.screenshot())
		.greyscale()
		.raw()
		.toBuffer({ resolveWithObject: true });
	const step = info.width / (size + 8);
	const modules = Array.from({ length: size }, (_, row) =>
		Array.from({ length: size }, (_, column) => {
			const x = Math.floor((column + 4.5) * step);
			const y = Math.floor((row + 4.5) * step);
			return data[(y * info.width + x) * info.channels] < 128;
		}),
	);
	const read = readQr(modules);
	expect(read.syndromesAreZero).toBe(true);
	return textOf(read.data);
}

test('take it home: no code without a public address; with one the code on screen opens the same comparison', async ({
	page,
}) => {
	await page.goto('/compare?teeth=skm-0104,skm-0131');
	await ready(page);
	await expect(page.getByRole('tab', { name: 'Take home' })).toHaveCount(0);

	await writeFile(file, `${before}\npublic_address: https://teeth.skerrow.example/table/\n`);
	const tab = page.getByRole('tab', { name: 'Take home' });
	await expect(tab).toHaveCount(1);
	await tab.click();
	const code = page.locator('.shelf [data-qr]');
	await expect(code).toBeVisible();
	await expect(code).toHaveAccessibleName('Code that opens this comparison on a phone');
	const address = 'https://teeth.skerrow.example/table/compare?teeth=skm-0104,skm-0131&lang=en';
	expect(await readOff(code)).toBe(address);
	await expect(page.locator('.shelf [data-address]')).toHaveText(address.replace('https://', ''));
	// nothing leads out
	await expect(page.locator('a[href*="skerrow.example"]')).toHaveCount(0);

	// the code follows the table and the language
	await page.locator('a[hreflang="es"]').click();
	await expect(page.locator('.shelf [data-address]')).toContainText('lang=es');
	expect(await readOff(code)).toBe(address.replace('lang=en', 'lang=es'));

	// and it stands on the printed page
	await expect(page.locator('.printed [data-qr]')).toHaveCount(1);
	await page.emulateMedia({ media: 'print' });
	await expect(page.locator('.printed [data-qr]')).toBeVisible();
	expect(await readOff(page.locator('.printed [data-qr]'))).toBe(address.replace('lang=en', 'lang=es'));
});
