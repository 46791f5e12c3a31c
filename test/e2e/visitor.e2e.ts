import { changed, drawn, expect, pixels, ready, test, touchDrag, touchSpread, view } from './helpers';

// The first thirty seconds of a visitor's journey, by touch and by keyboard, at every size.

test('touch: from the start screen to two teeth that turn', async ({ page }) => {
	await page.goto('/');
	await ready(page);
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('What can a tooth tell?');
	await page.locator('[data-room="compare"]').tap();
	await ready(page);
	await drawn(page);

	// both views hold a picture, not a blank
	const left = await pixels(view(page, 1));
	const right = await pixels(view(page, 2));
	expect(left.deviation).toBeGreaterThan(8);
	expect(right.deviation).toBeGreaterThan(8);
	expect(changed(left, right)).toBeGreaterThan(0.02);

	// a finger turns the tooth under it, and only that one
	await touchDrag(page, view(page, 1), 90, 10);
	await drawn(page);
	const turned = await pixels(view(page, 1));
	expect(changed(left, turned)).toBeGreaterThan(0.01);
	expect(changed(right, await pixels(view(page, 2)))).toBeLessThan(0.002);

	// two fingers bring it closer: the scale bar stands for less
	const bar = page.locator('[data-place="1"] [data-scale]');
	const before = Number.parseFloat(await bar.innerText());
	await touchSpread(page, view(page, 1), 40, 170);
	await drawn(page);
	expect(changed(turned, await pixels(view(page, 1)))).toBeGreaterThan(0.05);
	await expect.poll(async () => Number.parseFloat(await bar.innerText())).toBeLessThan(before);

	// a double tap sets it back; on a busy machine two taps may come too far apart to be one
	const box = await view(page, 1).boundingBox();
	if (!box) throw new Error('no view');
	await expect(async () => {
		await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
		await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
		await drawn(page);
		expect(changed(left, await pixels(view(page, 1)))).toBeLessThan(0.01);
	}).toPass({ timeout: 15_000 });
});

test('touch: another tooth from the drawer, same scale and same height', async ({ page }) => {
	await page.goto('/compare');
	await ready(page);
	await drawn(page);
	const was = await page.locator('[data-place="1"]').getAttribute('data-specimen');
	const other = page.locator('[data-specimen][aria-pressed="false"]').last();
	const id = await other.getAttribute('data-specimen');
	await other.scrollIntoViewIfNeeded();
	await other.tap();
	await expect(page.locator('[data-place="1"]')).toHaveAttribute('data-specimen', String(id));
	expect(id).not.toBe(was);
	await drawn(page);
	expect((await pixels(view(page, 1))).deviation).toBeGreaterThan(8);
	// the address keeps what lies on the table
	await expect.poll(() => new URL(page.url()).searchParams.get('teeth')).toContain(String(id));

	const bars = () => page.locator('[data-scale]').allInnerTexts();
	const [one, two] = await bars();
	expect(one).toBe(two); // same scale: the bars agree
	await page.getByRole('button', { name: 'Same height' }).tap();
	await drawn(page);
	const heights = await page.locator('[data-measure="measure_height"] dd').allInnerTexts();
	expect(heights[0]).not.toBe(heights[1]);
	for (const height of heights) expect(height).toMatch(/^\d+(\.\d+)?\smm$/u);
});

test('touch: turning both together', async ({ page }) => {
	await page.goto('/compare');
	await ready(page);
	await page.getByRole('button', { name: 'Turn both' }).tap();
	await drawn(page);
	const right = await pixels(view(page, 2));
	await touchDrag(page, view(page, 1), 100, 0);
	await drawn(page);
	expect(changed(right, await pixels(view(page, 2)))).toBeGreaterThan(0.005);
});

test('keyboard: everything that dragging does', async ({ page }) => {
	await page.goto('/');
	await ready(page);
	await page.locator('[data-room="compare"]').focus();
	await page.keyboard.press('Enter');
	await ready(page);
	await drawn(page);
	const first = await pixels(view(page, 1));
	await view(page, 1).focus();
	for (let i = 0; i < 3; i += 1) await page.keyboard.press('ArrowRight');
	await page.keyboard.press('ArrowUp');
	await drawn(page);
	const turned = await pixels(view(page, 1));
	expect(changed(first, turned)).toBeGreaterThan(0.01);
	for (let i = 0; i < 3; i += 1) await page.keyboard.press('+');
	await drawn(page);
	const closer = await pixels(view(page, 1));
	expect(changed(turned, closer)).toBeGreaterThan(0.03);
	await page.keyboard.press('Home');
	await drawn(page);
	await view(page, 1).blur();
	await expect.poll(async () => changed(first, await pixels(view(page, 1)))).toBeLessThan(0.02);

	// the buttons do the same
	await page.locator('[data-place="1"]').getByRole('button', { name: 'Turn right' }).press('Enter');
	await drawn(page);
	await page.locator('[data-place="1"]').getByRole('button', { name: 'Turn right' }).blur();
	expect(changed(first, await pixels(view(page, 1)))).toBeGreaterThan(0.004);

	// and the drawer
	const pick = page.locator('[data-specimen][aria-pressed="false"]').first();
	const id = await pick.getAttribute('data-specimen');
	await pick.focus();
	await page.keyboard.press('Enter');
	await expect(page.locator('[data-place="1"]')).toHaveAttribute('data-specimen', String(id));
});

test('a tooth touched on the start screen lies on the table', async ({ page }) => {
	await page.goto('/');
	await ready(page);
	const tooth = page.locator('a[href*="teeth="]').nth(1);
	const id = new URL(String(await tooth.getAttribute('href')), 'http://x').searchParams.get('teeth');
	await tooth.tap();
	await ready(page);
	await expect(page.locator('[data-place="1"]')).toHaveAttribute('data-specimen', String(id));
	await drawn(page);
});

test('nothing is drawn while nothing moves, on one canvas', async ({ page }) => {
	await page.goto('/compare');
	await ready(page);
	await drawn(page);
	await page.waitForTimeout(800);
	const before = await page.evaluate(() => window.toothTable?.stats());
	await page.waitForTimeout(2000);
	const after = await page.evaluate(() => window.toothTable?.stats());
	expect(after?.frames).toBe(before?.frames);
	expect(after?.contexts).toBe(1);
	expect(after?.views).toBe(2);
	await expect(page.locator('canvas')).toHaveCount(1);
	await page.locator('.home').tap();
	await page.locator('.start[data-ready]').waitFor();
	await expect(page.locator('canvas')).toHaveCount(1);
	expect((await page.evaluate(() => window.toothTable?.stats()))?.views).toBe(0);
});
