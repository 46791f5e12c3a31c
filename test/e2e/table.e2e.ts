import { AxeBuilder } from './axe';
import { drawn, expect, ready, test, view } from './helpers';

// Two to four teeth: laid, carried, taken away, told apart.

const ids = (page: import('@playwright/test').Page) =>
	page
		.locator('[data-place]')
		.evaluateAll((places) => places.map((place) => place.getAttribute('data-specimen')));

test('three and four teeth: added, a fifth changes places, taken away down to one', async ({ page }) => {
	await page.goto('/compare?teeth=skm-0143,skm-0112');
	await ready(page);
	await drawn(page);
	const status = page.getByRole('status');
	const pick = (id: string) => page.locator(`[data-drawer] [data-specimen="${id}"]`).press('Enter');

	await page.locator('.bar').getByRole('button', { name: 'One more tooth' }).tap();
	await expect(page.locator('[data-place="3"]')).toContainText('Choose a tooth');
	await expect(status).toContainText('goes to place 3');
	await pick('skm-0104');
	expect(await ids(page)).toEqual(['skm-0143', 'skm-0112', 'skm-0104']);
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Three teeth in the hand');
	await page.locator('.bar').getByRole('button', { name: 'One more tooth' }).tap();
	await pick('skm-0175');
	expect(await ids(page)).toEqual(['skm-0143', 'skm-0112', 'skm-0104', 'skm-0175']);
	await expect(page.getByRole('button', { name: 'One more tooth' })).toHaveCount(0);
	for (const place of [1, 2, 3, 4] as const)
		await expect(view(page, place)).toHaveAttribute('data-drawn', 'true');
	expect((await page.evaluate(() => window.toothTable?.stats()))?.views).toBe(4);
	await expect.poll(() => new URL(page.url()).search).toContain('teeth=skm-0143,skm-0112,skm-0104,skm-0175');

	// one scale for all
	await expect.poll(async () => new Set(await page.locator('[data-scale]').allInnerTexts()).size).toBe(1);

	await pick('skm-0150');
	expect(await ids(page)).toEqual(['skm-0150', 'skm-0112', 'skm-0104', 'skm-0175']);
	await expect(status).toContainText('went back to the drawer');

	// by its number a place is chosen; by its cross a tooth goes back
	await page.getByRole('button', { name: 'Place 3: the next tooth goes here' }).tap();
	await pick('skm-0161');
	expect(await ids(page)).toEqual(['skm-0150', 'skm-0112', 'skm-0161', 'skm-0175']);
	const away = (place: number) => page.locator(`[data-place="${place}"] .away`);
	await away(2).focus();
	await page.keyboard.press('Enter');
	expect(await ids(page)).toEqual(['skm-0150', 'skm-0161', 'skm-0175']);
	await expect(page.locator('[data-place="2"] [data-number]')).toBeFocused();
	await away(1).tap();
	await away(1).tap();
	expect(await ids(page)).toEqual([null, 'skm-0175']);
	await expect(away(2)).toHaveCount(0);
	await expect(page.getByRole('tab', { name: 'Tell me' })).toHaveCount(0);
	expect((await page.evaluate(() => window.toothTable?.stats()))?.views).toBe(1);

	// the address keeps the open place too
	await expect.poll(() => new URL(page.url()).search).toContain('teeth=,skm-0175');
	await page.reload();
	await ready(page);
	expect(await ids(page)).toEqual([null, 'skm-0175']);
});

test('a tooth is carried from the drawer to a place, to the free table, and back', async ({ page }) => {
	await page.goto('/compare?teeth=skm-0143,skm-0112');
	await ready(page);
	await drawn(page);
	const client = await page.context().newCDPSession(page);
	const middle = async (selector: string) => {
		const box = await page.locator(selector).first().boundingBox();
		if (!box) throw new Error(`nothing at ${selector}`);
		return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
	};
	const carry = async (from: { x: number; y: number }, to: { x: number; y: number }) => {
		const finger = (share: number) => [
			{ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share, id: 1 },
		];
		await client.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: finger(0) });
		for (let i = 1; i <= 10; i += 1)
			await client.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: finger(i / 10) });
		await client.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
	};
	// upwards, as a finger would
	const tile = async (id: string) => middle(`[data-drawer] [data-specimen="${id}"]`);

	const second = await middle('[data-place="2"] .view');
	const from = await tile('skm-0131');
	await carry(from, { x: from.x + Math.sign(second.x - from.x) * 60, y: second.y });
	await expect.poll(async () => (await ids(page)).includes('skm-0131')).toBe(true);
	expect(await ids(page)).toHaveLength(2);

	// a mouse carries in any direction; the click at its end picks nothing
	const [one, there] = [await tile('skm-0118'), await middle('[data-place="1"] .view')];
	await page.mouse.move(one.x, one.y);
	await page.mouse.down();
	await page.mouse.move(there.x, there.y, { steps: 6 });
	await expect(page.locator('[data-place="1"]')).toHaveClass(/landing/);
	await page.mouse.up();
	expect((await ids(page))[0]).toBe('skm-0118');

	// Escape drops it where it came from
	const before = await ids(page);
	const other = await tile('skm-0126');
	await page.mouse.move(other.x, other.y);
	await page.mouse.down();
	await page.mouse.move(there.x, there.y, { steps: 6 });
	await page.keyboard.press('Escape');
	await page.mouse.up();
	expect(await ids(page)).toEqual(before);

	// its number carried to the drawer takes it away
	await carry(await middle('[data-place="2"] [data-number]'), await tile('skm-0126'));
	await expect.poll(async () => (await ids(page))[1]).toBeNull();
	await carry(await tile('skm-0126'), await middle('[data-place="2"]'));
	await expect.poll(async () => (await ids(page))[1]).toBeTruthy();
	await client.detach();
});

test('of four teeth two are told apart, by the numbers of their places', async ({ page }) => {
	await page.goto('/compare?teeth=skm-0143,skm-0112,skm-0104,skm-0175');
	await ready(page);
	await page.getByRole('tab', { name: 'Tell me' }).tap();
	const which = page.getByRole('group', { name: 'Which two?' });
	const chosen = () =>
		which
			.locator('button[aria-pressed="true"]')
			.evaluateAll((all) => all.map((one) => one.textContent.trim()));
	expect(await chosen()).toEqual(['1', '2']);
	await which.getByRole('button', { name: 'Tooth 4' }).tap();
	expect(await chosen()).toEqual(['2', '4']);
	for (const sentence of await page.locator('.differences .sentence').allInnerTexts())
		expect(sentence).not.toMatch(/Tooth [13]\b/);
	await expect(page.locator('.differences .sentence').first()).toHaveText(
		/Tooth 2.*Tooth 4|Tooth 4.*Tooth 2/,
	);
	const { violations } = await new AxeBuilder({ page }).analyze();
	expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
});

test('the drawer is sorted by animal, place and part, together', async ({ page }) => {
	await page.goto('/compare?teeth=skm-0143,skm-0112');
	await ready(page);
	const tiles = page.locator('[data-drawer] [data-specimen]');
	const all = await tiles.count();
	const facet = (name: string) => page.locator('.facet > button').filter({ hasText: new RegExp(`^${name}`) });
	await facet('Part').tap();
	const panel = page.getByRole('group', { name: 'Part', exact: true });
	const { violations } = await new AxeBuilder({ page }).analyze();
	expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
	const option = panel.getByRole('button', { name: /^shed crown: \d+ teeth$/ });
	const told = Number(/\d+/.exec(String(await option.getAttribute('aria-label')))?.[0]);
	await option.tap();
	await expect(tiles).toHaveCount(told);
	expect(told).toBeLessThan(all);
	await expect(page.locator('.bar p')).toHaveText(`${told} teeth of ${all}`);
	// a hand on a tooth does not close what another hand has open
	await view(page, 1).tap();
	await expect(panel).toBeVisible();
	await page.keyboard.press('Escape');
	await expect(panel).toHaveCount(0);
	await expect(facet('Part')).toBeFocused();

	await facet('Animal').press('Enter');
	const none = page.getByRole('button', { name: /: no tooth$/ }).first();
	await none.press('Enter');
	await expect(tiles).toHaveCount(0);
	await expect(page.locator('[data-drawer]')).toContainText('No tooth is like that. Clear one filter.');
	await page.keyboard.press('Escape');
	await page.getByRole('button', { name: 'Show all' }).tap();
	await expect(tiles).toHaveCount(all);

	// the arrow keys walk along the drawer, which is one stop of Tab
	await tiles.first().focus();
	await page.keyboard.press('End');
	await expect(tiles.last()).toBeFocused();
	await page.keyboard.press('ArrowLeft');
	await expect(tiles.nth(all - 2)).toBeFocused();
	expect(await page.locator('[data-drawer] [data-specimen][tabindex="0"]').count()).toBe(1);
});
