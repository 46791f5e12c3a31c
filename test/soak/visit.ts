import type { CDPSession, Page } from '@playwright/test';

/** Numbers from 0 up to 1, the same for the same seed. */
export type Random = () => number;

const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)];

/** A finger over the middle of something, as a touchscreen reports it. */
async function drag(page: Page, client: CDPSession, random: Random, selector: string): Promise<void> {
	const box = await page.locator(selector).first().boundingBox();
	if (!box) return;
	const x = box.x + box.width * (0.4 + 0.2 * random());
	const y = box.y + box.height * (0.4 + 0.2 * random());
	const dx = (random() - 0.5) * box.width * 0.6;
	const dy = (random() - 0.5) * box.height * 0.4;
	await client.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y, id: 1 }] });
	for (let i = 1; i <= 8; i += 1)
		await client.send('Input.dispatchTouchEvent', {
			type: 'touchMove',
			touchPoints: [{ x: x + (dx * i) / 8, y: y + (dy * i) / 8, id: 1 }],
		});
	await client.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}

/** Presses something if it is there; a press by script, since many fit into a second. */
const press = (page: Page, selector: string, at = 0): Promise<boolean> =>
	page.evaluate(
		([wanted, index]) => {
			const found = [...document.querySelectorAll<HTMLElement>(wanted)];
			const one = found[(index as number) % Math.max(found.length, 1)];
			one?.click();
			return Boolean(one);
		},
		[selector, at] as [string, number],
	);

/** Taps until what it leads to is there: the browser takes a tap that follows a swipe at once for the end of the swipe. */
async function tapTo(page: Page, selector: string, there: string): Promise<void> {
	for (let tries = 0; tries < 5; tries += 1) {
		await page.locator(selector).tap();
		const come = page.locator(there).waitFor({ timeout: 5_000 });
		if (
			await come.then(
				() => true,
				() => false,
			)
		)
			return;
	}
	throw new Error(`five taps on ${selector} did not lead to ${there}`);
}
const ready = (page: Page) => page.locator('[data-ready]').waitFor();
async function into(page: Page, room: string): Promise<void> {
	await page.locator(`[data-room="${room}"]`).tap();
	await page.waitForURL((url) => url.pathname === `/${room}`);
	await ready(page);
}

async function compare(page: Page, client: CDPSession, random: Random): Promise<void> {
	await into(page, 'compare');
	await page.waitForFunction(() => document.querySelectorAll('[data-drawn="true"]').length === 2);
	for (let i = 0; i < 4; i += 1) {
		await press(
			page,
			'[data-drawer] button[data-specimen], button[data-specimen]',
			Math.floor(random() * 100),
		);
		await drag(page, client, random, `[data-place="${1 + (i % 2)}"] [role="application"]`);
	}
	await press(page, '#shelf-tab-tools');
	await press(page, pick(random, ['[data-tool="cut"]', '[data-tool="caliper"]', '[data-tool="overlay"]']));
	await page.waitForTimeout(150);
}

async function feeding(page: Page, client: CDPSession, random: Random): Promise<void> {
	await into(page, 'feeding');
	for (let i = 0; i < 3; i += 1) await press(page, 'main [role="tab"]', Math.floor(random() * 20));
	await drag(page, client, random, 'main svg');
}

async function replacement(page: Page, client: CDPSession, random: Random): Promise<void> {
	await into(page, 'replacement');
	for (let i = 0; i < 3; i += 1) {
		await press(page, '[role="tab"]', Math.floor(random() * 20));
		await drag(page, client, random, 'main [role="application"], main svg');
	}
}

/**
 * One visitor: from the start screen through one to three rooms, by finger, then away. Leaves the screen as it is; the
 * next visitor begins when it has returned to its start by itself.
 */
export async function visit(page: Page, client: CDPSession, random: Random): Promise<string[]> {
	const rooms = [compare, feeding, replacement];
	const path: string[] = [];
	if (random() < 0.3) await press(page, 'nav a[hreflang]', Math.floor(random() * 3));
	for (let i = 0, count = 1 + Math.floor(random() * 3); i < count; i += 1) {
		const room = i === 0 && random() < 0.6 ? compare : pick(random, rooms);
		await room(page, client, random);
		path.push(room.name);
		if (i + 1 < count) {
			await tapTo(page, 'header a.home', '[data-room="compare"]');
		}
	}
	return path;
}
