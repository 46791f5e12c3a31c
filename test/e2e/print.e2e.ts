import { drawn, expect, ready, test } from './helpers';

test('a printed comparison has measured drawings, measures and words on white, and no buttons', async ({
	page,
}) => {
	await page.goto('/compare?teeth=skm-0104,skm-0131');
	await ready(page);
	await drawn(page);
	await expect(page.locator('.drawn svg')).toHaveCount(2);
	// out of sight on the screen
	const box = await page.locator('.drawn').first().boundingBox();
	expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThan(0);

	await page.emulateMedia({ media: 'print' });
	for (const place of [1, 2]) {
		const pane = page.locator(`[data-place="${place}"]`);
		await expect(pane.locator('.drawn svg')).toBeVisible();
		expect(await pane.locator('.drawn svg path').count()).toBeGreaterThan(4);
		// the words stand below the drawing, not under it
		const drawing = await pane.locator('.drawn svg').boundingBox();
		const words = await pane.locator('.words').boundingBox();
		const figure = await pane.locator('.drawn').boundingBox();
		expect(drawing?.height).toBeLessThanOrEqual((figure?.height ?? 0) + 1);
		expect((drawing?.y ?? 0) + (drawing?.height ?? 0)).toBeLessThanOrEqual((words?.y ?? 0) + 1);
		await expect(pane.locator('[data-measure="measure_height"]')).toBeVisible();
	}
	await expect(page.locator('.shelf, .buttons, canvas').filter({ visible: true })).toHaveCount(0);
	const pdf = await page.pdf({ format: 'A4' });
	expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
	expect(pdf.length).toBeGreaterThan(20_000);
});
