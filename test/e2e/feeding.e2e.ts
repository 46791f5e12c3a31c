import { AxeBuilder } from './axe';
import type { Locator, Page } from '@playwright/test';
import { changed, expect, pixels, ready, test } from './helpers';

// The feeding guide: the triangle, the bite, and everything that stands behind its numbers.

const STEPS = ['shape', 'bite', 'size', 'ours', 'jaw', 'ridges'];
const CORNERS = { pierce: [0.09, 0.9], cut: [0.91, 0.9], crush: [0.5, 0.12] } as const;

const morph = (page: Page): Locator => page.locator('[data-morph]');
const tab = (page: Page, step: string): Locator => page.locator(`#feed-tab-${step}`);
const zone = (page: Page): Locator => page.locator('[data-zone]');

/** Waits until the tooth in front is drawn and the stage rests. */
async function still(page: Page): Promise<void> {
	await expect(morph(page)).toHaveAttribute('data-drawn', 'true');
	await expect.poll(() => page.evaluate(() => window.toothTable?.stats().moving)).toBe(false);
}

/** A finger that moves over the triangle's drawing, in shares of its box, and lifts at the end. */
async function dragOver(page: Page, path: readonly (readonly [number, number])[]): Promise<void> {
	const box = await page.locator('[data-triangle] .slider svg').boundingBox();
	if (!box) throw new Error('dragOver: no triangle');
	const client = await page.context().newCDPSession(page);
	const at = ([x, y]: readonly [number, number]) => [
		{ x: box.x + x * box.width, y: box.y + y * box.height, id: 1 },
	];
	await client.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(path[0]) });
	for (let i = 1; i < path.length; i += 1)
		for (let k = 1; k <= 5; k += 1) {
			const share = k / 5;
			const [from, to] = [path[i - 1], path[i]];
			await client.send('Input.dispatchTouchEvent', {
				type: 'touchMove',
				touchPoints: at([from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]),
			});
		}
	await client.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
	await client.detach();
}

/** Presses a finger on an element until `done`, then lifts it. */
async function holdUntil(page: Page, target: Locator, done: () => Promise<void>): Promise<void> {
	await target.scrollIntoViewIfNeeded();
	const box = await target.boundingBox();
	if (!box) throw new Error('holdUntil: the element is not on screen');
	const client = await page.context().newCDPSession(page);
	const touchPoints = [{ x: box.x + box.width / 2, y: box.y + box.height / 2, id: 1 }];
	await client.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints });
	await done();
	await client.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
	await client.detach();
}

for (const [name, viewport] of [
	['landscape', { width: 1920, height: 1080 }],
	['portrait', { width: 1080, height: 1920 }],
	['phone', { width: 390, height: 844 }],
] as const) {
	test(`a child's path by touch: three corners, two bites, under a minute (${name})`, async ({ page }) => {
		test.setTimeout(120_000);
		await page.setViewportSize(viewport);
		await page.goto('/');
		await ready(page);
		const from = Date.now();
		await page.locator('[data-room="feeding"]').tap();
		await expect(page).toHaveURL(/\/feeding/);
		await ready(page);
		await still(page);
		const seen = [await pixels(morph(page))];
		for (const [corner, place] of Object.entries(CORNERS)) {
			await dragOver(page, [[0.5, 0.62], place]);
			await expect(zone(page)).toHaveAttribute('data-zone', corner);
			await still(page);
			const now = await pixels(morph(page));
			for (const before of seen) expect(changed(before, now), corner).toBeGreaterThan(0.01);
			seen.push(now);
		}
		// on a slow machine the words above may still move as the finger comes down
		await expect(async () => {
			await page.getByRole('button', { name: 'Now bite something' }).tap();
			await expect(page.locator('[data-bite]')).toBeVisible({ timeout: 3000 });
		}).toPass({ timeout: 20_000 });
		for (const prey of ['squid-mantle', 'bone']) {
			const button = page.locator(`[data-bite] [data-prey-id="${prey}"]`);
			await button.tap();
			await expect(page.locator('[data-bite]')).toHaveAttribute('data-prey', prey);
			await holdUntil(page, page.locator('.hold'), () =>
				expect(page.locator('[data-bite]')).toHaveAttribute('data-done', ''),
			);
			await expect(page.locator('.verdict')).toBeVisible();
		}
		expect(Date.now() - from).toBeLessThan(60_000);
		// nothing reaches out of the window sideways
		const across = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
		expect(across).toBeLessThanOrEqual(0);
	});
}

test('the tooth follows the finger without a step: each place is a little different from the last', async ({
	page,
}) => {
	await page.goto('/feeding');
	await ready(page);
	await still(page);
	const slider = page.getByRole('slider', { name: /Shape of the tooth/ });
	await slider.focus();
	let before = await pixels(morph(page));
	for (let i = 0; i < 3; i += 1) {
		await page.keyboard.press('ArrowUp');
		await still(page);
		const now = await pixels(morph(page));
		expect(changed(before, now)).toBeGreaterThan(0.0005);
		expect(changed(before, now)).toBeLessThan(0.08);
		before = now;
	}
});

test('keyboard: triangle, tabs, biting, and the panel behind a number', async ({ page }) => {
	await page.goto('/feeding');
	await ready(page);
	const slider = page.getByRole('slider', { name: /Shape of the tooth/ });
	await slider.focus();
	for (let i = 0; i < 30; i += 1) await page.keyboard.press('ArrowLeft');
	for (let i = 0; i < 30; i += 1) await page.keyboard.press('ArrowDown');
	await expect(zone(page)).toHaveAttribute('data-zone', 'pierce');
	await expect(slider).toHaveAttribute('aria-valuetext', /Pierce (9\d|100) %/);
	await page.keyboard.press('Home');
	await expect(zone(page)).toHaveAttribute('data-zone', 'middle');

	await tab(page, 'shape').focus();
	await page.keyboard.press('ArrowRight');
	await expect(tab(page, 'bite')).toBeFocused();
	await expect(page.locator('main')).toHaveAttribute('data-step', 'bite');

	const hold = page.locator('.hold');
	const force = page.locator('[data-tooth="front"] dd button').first();
	await hold.focus();
	await page.keyboard.press('Enter');
	await expect.poll(async () => Number.parseFloat(await force.innerText())).toBeGreaterThan(0.5);
	await page.keyboard.press('Enter');
	await expect(hold).toHaveAttribute('aria-pressed', 'false');
	// the last frame of the movement may still be on its way to the page
	await page.waitForTimeout(300);
	const stopped = await force.innerText();
	await page.waitForTimeout(300);
	expect(await force.innerText()).toBe(stopped);
	await page.keyboard.press('Enter');
	await expect(page.locator('[data-bite]')).toHaveAttribute('data-done', '');

	await force.focus();
	await page.keyboard.press('Enter');
	const panel = page.locator('dialog[data-note]');
	await expect(panel).toBeVisible();
	await expect(panel).toContainText('MPa');
	await page.keyboard.press('Escape');
	await expect(panel).toBeHidden();
	await expect(force).toBeFocused();
});

test('every number of a bite opens to how it comes about, what goes in, and who says so', async ({
	page,
}) => {
	test.setTimeout(120_000);
	await page.emulateMedia({ reducedMotion: 'reduce' });
	await page.goto('/feeding');
	await ready(page);
	await tab(page, 'bite').tap();
	await page.getByRole('button', { name: 'Two teeth' }).tap();
	const panel = page.locator('dialog[data-note]');
	const prey = page.locator('[data-bite] [data-prey-id]');
	for (let i = 0; i < (await prey.count()); i += 1) {
		await prey.nth(i).tap();
		await page.locator('.hold').focus();
		await page.keyboard.press('Enter');
		await expect(page.locator('[data-bite]')).toHaveAttribute('data-done', '');
		const numbers = page.locator('[data-tooth] [aria-haspopup="dialog"]');
		expect(await numbers.count()).toBe(10);
		for (let k = 0; k < 10; k += 1) {
			await numbers.nth(k).tap();
			await expect(panel).toBeVisible();
			expect(
				(await panel.locator('dl li').count()) + (await panel.locator('h3 + ul li').count()),
			).toBeGreaterThan(0);
			await panel.getByRole('button', { name: 'Close' }).tap();
			await expect(panel).toBeHidden();
		}
	}
});

test('reader: the tree names the triangle, the steps, the prey and what happened', async ({ page }) => {
	await page.emulateMedia({ reducedMotion: 'reduce' });
	await page.goto('/feeding');
	await ready(page);
	await expect(page.getByRole('tablist', { name: 'Parts of the feeding guide' }).getByRole('tab')).toHaveText(
		['Shape', 'Bite', 'Size', 'Our teeth', 'One jaw', 'Ridges'],
	);
	await expect(page.locator('#feed-panel')).toMatchAriaSnapshot(`
    - tabpanel "Shape":
      - application /A bit of everything/
      - heading "A bit of everything" [level=2]
      - button /Pierce/
      - button /Cut/
      - button /Crush/
      - slider "Shape of the tooth, between pierce, cut and crush"
      - button "Middle"
  `);
	await tab(page, 'bite').tap();
	await page.getByRole('group', { name: 'What is bitten' }).getByRole('button', { name: 'Bone' }).tap();
	await page.locator('.hold').focus();
	await page.keyboard.press('Enter');
	await expect(page.locator('[data-bite] [role="status"]')).toHaveText(/Your tooth: /);
	await tab(page, 'size').tap();
	await expect(page.getByRole('slider', { name: 'How tall is the crown?' })).toHaveAttribute(
		'aria-valuetext',
		/^\d+ mm$/,
	);
});

test('size: force follows the square of the height', async ({ page }) => {
	await page.goto('/feeding');
	await ready(page);
	await tab(page, 'size').tap();
	const slider = page.getByRole('slider', { name: 'How tall is the crown?' });
	const times = page.locator('[data-size] .facts button').first();
	for (const [height, shown] of [
		[8, '× 1.0'],
		[16, '× 4.0'],
		[80, '× 100'],
	] as const) {
		await slider.fill(String(height));
		await expect(times).toContainText(shown);
	}
	await expect(page.locator('[data-size] output')).toHaveText('80 mm');
	await page.getByRole('button', { name: 'Smaller' }).tap();
	await expect(page.locator('[data-size] output')).toHaveText('76 mm');
});

test('ours: a tooth of the collection, from the list, the map and another room', async ({ page }) => {
	await page.goto('/feeding?tooth=skm-0112');
	await ready(page);
	await expect(page.locator('[data-ours]')).toHaveAttribute('data-ours', 'skm-0112');
	const list = page.getByRole('group', { name: 'The museum’s teeth' }).getByRole('button');
	await list.first().scrollIntoViewIfNeeded();
	await list.first().tap();
	await expect(list.first()).toHaveAttribute('aria-pressed', 'true');
	await expect(page.locator('[data-ours] [data-drawn="true"]')).toBeVisible();
	const shares = await page.locator('[data-ours] .guilds b').allInnerTexts();
	expect(shares.length).toBeGreaterThan(0);
	const sum = shares.reduce((total, share) => total + Number.parseInt(share, 10), 0);
	expect(sum).toBeGreaterThan(60);
	expect(sum).toBeLessThanOrEqual(102);
	// a cloud's middle brings its tooth
	const was = await page.locator('[data-ours]').getAttribute('data-ours');
	const dot = await page.locator('[data-ours] .map .dot').last().boundingBox();
	if (!dot) throw new Error('no cloud');
	await page.touchscreen.tap(dot.x + dot.width / 2, dot.y + dot.height / 2);
	await expect(page.locator('[data-ours]')).not.toHaveAttribute('data-ours', String(was));
});

test('jaw: dragged along, each position says what it does', async ({ page }) => {
	await page.goto('/feeding');
	await ready(page);
	await tab(page, 'jaw').tap();
	await expect(page.locator('[data-jaw]')).toHaveAttribute('data-stop', 'front');
	await still(page);
	const front = await pixels(morph(page));
	await page.getByRole('button', { name: 'Back' }).tap();
	await expect(page.locator('[data-jaw]')).toHaveAttribute('data-stop', 'back');
	await still(page);
	expect(changed(front, await pixels(morph(page)))).toBeGreaterThan(0.01);
	await page.getByRole('slider', { name: /Along the jaw/ }).focus();
	for (let i = 0; i < 40; i += 1) await page.keyboard.press('ArrowLeft');
	await expect(page.locator('[data-jaw]')).toHaveAttribute('data-stop', 'front');
});

test('nothing is left in graphics memory by going through the steps again and again', async ({ page }) => {
	await page.goto('/feeding');
	await ready(page);
	const held = async () => {
		await still(page);
		return page.evaluate(() => {
			const { geometries, textures, views, contexts } = window.toothTable!.stats();
			return { geometries, textures, views, contexts };
		});
	};
	const round = async () => {
		for (const step of STEPS) {
			await tab(page, step).tap();
			await expect(page.locator('main')).toHaveAttribute('data-step', step);
			await page.waitForTimeout(250);
		}
		await tab(page, 'ridges').tap();
		for (const much of ['Many', 'None', 'Some'])
			await page.getByRole('button', { name: much, exact: true }).tap();
		return held();
	};
	const first = await round();
	expect(first).toMatchObject({ views: 1, contexts: 1 });
	expect(await round()).toEqual(first);
});

test('the tooth comes back after the graphics context was lost', async ({ page }) => {
	await page.goto('/feeding');
	await ready(page);
	await still(page);
	const before = await pixels(morph(page));
	await page.evaluate(async () => {
		const gl = document.querySelector('canvas')!.getContext('webgl2')!;
		const lose = gl.getExtension('WEBGL_lose_context')!;
		lose.loseContext();
		await new Promise((resolve) => setTimeout(resolve, 300));
		lose.restoreContext();
	});
	await expect.poll(() => page.evaluate(() => window.toothTable?.stats().contexts)).toBe(1);
	await still(page);
	await expect.poll(async () => changed(before, await pixels(morph(page)))).toBeLessThan(0.01);
	await page.getByRole('slider', { name: /Shape of the tooth/ }).focus();
	for (let i = 0; i < 8; i += 1) await page.keyboard.press('ArrowUp');
	await still(page);
	expect(changed(before, await pixels(morph(page)))).toBeGreaterThan(0.003);
});

test('without WebGL the tooth is drawn flat and still follows', async ({ page }) => {
	await page.addInitScript(() => {
		const real = HTMLCanvasElement.prototype.getContext as (...args: unknown[]) => unknown;
		HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, ...args: unknown[]) {
			return /webgl/.test(String(args[0])) ? null : real.apply(this, args);
		} as typeof HTMLCanvasElement.prototype.getContext;
	});
	await page.goto('/feeding');
	await ready(page);
	const crown = page.locator('[data-morph] path.crown');
	const before = await crown.getAttribute('d');
	await page.getByRole('button', { name: /Crush/ }).tap();
	await expect(zone(page)).toHaveAttribute('data-zone', 'crush');
	expect(await crown.getAttribute('d')).not.toBe(before);
	for (const step of STEPS) {
		await tab(page, step).tap();
		await expect(page.locator('main')).toHaveAttribute('data-step', step);
	}
});

for (const lang of ['en', 'fr', 'es']) {
	test(`axe finds nothing in any step (${lang})`, async ({ page }) => {
		test.setTimeout(120_000);
		await page.emulateMedia({ reducedMotion: 'reduce' });
		await page.goto(`/feeding?lang=${lang}`);
		await ready(page);
		for (const step of STEPS) {
			await tab(page, step).tap();
			await expect(page.locator('main')).toHaveAttribute('data-step', step);
			if (step === 'bite') {
				await page.locator('.hold').focus();
				await page.keyboard.press('Enter');
				await expect(page.locator('[data-bite]')).toHaveAttribute('data-done', '');
			}
			// colours and structure are the same in every language; words and widths are looked at in each
			if (lang === 'en') {
				const { violations } = await new AxeBuilder({ page })
					.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
					.analyze();
				expect(violations.map(({ id, nodes }) => `${step} ${id}: ${nodes[0]?.html}`)).toEqual([]);
			}
			// a key without words would show as itself
			expect(await page.locator('main').innerText()).not.toMatch(/feed_|measure_/);
			const small = await page
				.locator('main button, main a, main summary, .steps button')
				.evaluateAll((all) =>
					all
						.map((one) => ({ box: one.getBoundingClientRect(), html: one.outerHTML.slice(0, 90) }))
						.filter(({ box }) => box.width > 0 && (box.height < 43.9 || box.width < 43.9))
						.map(({ box, html }) => `${Math.round(box.width)} x ${Math.round(box.height)} ${html}`),
				);
			expect(small, step).toEqual([]);
		}
	});
}
