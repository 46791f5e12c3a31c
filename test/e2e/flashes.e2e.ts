import type { Page } from '@playwright/test';
import sharp from 'sharp';
import { AREA_SHARE, flashes, type Frame } from './flashes';
import { drawn, expect, ready, test } from './helpers';

const [W, H] = [64, 36];

/** Records what the screen shows while something is done; every frame that the browser draws. */
async function record(page: Page, does: () => Promise<void>): Promise<Frame[]> {
	const client = await page.context().newCDPSession(page);
	const pictures: { at_s: number; data: string }[] = [];
	client.on('Page.screencastFrame', ({ data, metadata, sessionId }) => {
		pictures.push({ at_s: metadata.timestamp ?? 0, data });
		void client.send('Page.screencastFrameAck', { sessionId }).catch(() => undefined);
	});
	await client.send('Page.startScreencast', { format: 'jpeg', quality: 70, maxWidth: 480, maxHeight: 270 });
	await does();
	await client.send('Page.stopScreencast');
	await client.detach();
	return Promise.all(
		pictures.map(async ({ at_s, data }) => ({
			at_s,
			rgb: await sharp(Buffer.from(data, 'base64'))
				.removeAlpha()
				.resize(W, H, { fit: 'fill' })
				.raw()
				.toBuffer(),
		})),
	);
}

async function expectCalm(
	page: Page,
	what: string,
	does: () => Promise<void>,
	// a frame is recorded when something changes
	atLeast = 10,
): Promise<void> {
	const frames = await record(page, does);
	expect(frames.length, `${what}: frames recorded`).toBeGreaterThanOrEqual(atLeast);
	const { general, red } = flashes(frames, W, H);
	expect(general, `${what}: share of a ten-degree field that flashes`).toBeLessThan(AREA_SHARE);
	expect(red, `${what}: red`).toBeLessThan(AREA_SHARE);
}

test('nothing flashes more than three times a second: the loop, teeth laid down quickly, a bite, a life played', async ({
	page,
}) => {
	test.setTimeout(120_000);
	await page.goto('/');
	await ready(page);
	await page.locator('[data-room="compare"]').tap();
	await drawn(page);
	await expectCalm(page, 'eight teeth in two seconds', async () => {
		const drawer = page.locator('button[data-specimen]');
		for (let i = 0; i < 8; i += 1) {
			await drawer.nth(i + 2).evaluate((button: HTMLElement) => button.click());
			await page.waitForTimeout(250);
		}
	});
	await page.goto('/feeding');
	await ready(page);
	await expectCalm(page, 'shapes and a bite', async () => {
		for (const step of ['shape', 'bite']) {
			await page.locator(`#feed-tab-${step}`).tap();
			await page.waitForTimeout(300);
		}
		await page.locator('.hold').focus();
		await page.keyboard.press('Enter');
		await page.waitForTimeout(2_000);
	});
	await page.goto('/replacement');
	await ready(page);
	await expectCalm(page, 'a life played', async () => {
		await page.getByRole('button', { name: /play/i }).first().tap();
		await page.waitForTimeout(4_000);
	});
	await page.clock.install();
	await page.goto('/');
	await ready(page);
	for (let s = 0; s < 45; s += 5) await page.clock.runFor(5_000);
	await expect(page.locator('.attract')).toBeVisible();
	await expectCalm(
		page,
		'the loop, from tooth to tooth',
		async () => {
			for (let i = 0; i < 90; i += 1) await page.clock.runFor(200);
		},
		4,
	);
});
