import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test as base, type APIRequestContext, type Locator, type Page } from '@playwright/test';
import sharp from 'sharp';

/** The served copy of content/, see serve.mjs. */
export const CONTENT = path.resolve(
	path.dirname(fileURLToPath(import.meta.url)),
	'../../test-results/served/content',
);

/** Every test fails on a console error, an uncaught error, or a request that leaves this machine. */
export const test = base.extend<{ watched: void }>({
	watched: [
		async ({ page }, use) => {
			const faults: string[] = [];
			page.on('console', (message) => {
				if (message.type() === 'error' && !faults.includes(message.text()))
					faults.push(`console: ${message.text()}`);
			});
			page.on('pageerror', (error) => faults.push(`uncaught: ${error.message}`));
			page.on('request', (request) => {
				const { protocol, hostname } = new URL(request.url());
				if (/^https?:$/.test(protocol) && hostname !== 'localhost') faults.push(`outside: ${request.url()}`);
			});
			await use();
			expect(faults.filter((fault) => !allowed(page).some((pattern) => pattern.test(fault)))).toEqual([]);
		},
		{ auto: true },
	],
});

const allowances = new WeakMap<Page, RegExp[]>();
const allowed = (page: Page) => allowances.get(page) ?? [];
/** Names a console error that a test causes on purpose. */
export function allowFault(page: Page, pattern: RegExp): void {
	allowances.set(page, [...allowed(page), pattern]);
}

export { expect };

/** Waits until the room says that its content stands and its first frame is drawn. */
export async function ready(page: Page): Promise<void> {
	await page.locator('[data-ready]').waitFor();
}

export const view = (page: Page, place: 1 | 2 | 3 | 4): Locator =>
	page.locator(`[data-place="${place}"]`).getByRole('application');

/** Waits until both teeth are drawn in 3D and the stage rests. */
export async function drawn(page: Page): Promise<void> {
	for (const place of [1, 2] as const) await expect(view(page, place)).toHaveAttribute('data-drawn', 'true');
	await expect.poll(() => page.evaluate(() => window.toothTable?.stats().moving)).toBe(false);
}

/** Grey levels of an element as shown on screen. */
export async function pixels(target: Locator): Promise<{ data: Buffer; deviation: number }> {
	const { data } = await sharp(await target.screenshot())
		.greyscale()
		.resize(160, 160, { fit: 'fill' })
		.raw()
		.toBuffer({ resolveWithObject: true });
	const mean = data.reduce((sum, value) => sum + value, 0) / data.length;
	const deviation = Math.sqrt(data.reduce((sum, value) => sum + (value - mean) ** 2, 0) / data.length);
	return { data, deviation };
}

/** Share of pixels that differ by more than 12 of 255 grey levels. */
export function changed(a: { data: Buffer }, b: { data: Buffer }): number {
	let count = 0;
	for (let i = 0; i < a.data.length; i += 1) if (Math.abs(a.data[i] - b.data[i]) > 12) count += 1;
	return count / a.data.length;
}

/** Drags one finger over the middle of an element by dx, dy px, as a touchscreen reports it. */
export async function touchDrag(page: Page, target: Locator, dx: number, dy: number): Promise<void> {
	const box = await target.boundingBox();
	if (!box) throw new Error('touchDrag: the element is not on screen');
	const client = await page.context().newCDPSession(page);
	const x = box.x + box.width / 2;
	const y = box.y + box.height / 2;
	const STEPS = 12;
	await client.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y, id: 1 }] });
	for (let i = 1; i <= STEPS; i += 1)
		await client.send('Input.dispatchTouchEvent', {
			type: 'touchMove',
			touchPoints: [{ x: x + (dx * i) / STEPS, y: y + (dy * i) / STEPS, id: 1 }],
		});
	await client.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
	await client.detach();
}

/** Spreads two fingers from the middle of an element. */
export async function touchSpread(
	page: Page,
	target: Locator,
	from_px: number,
	to_px: number,
): Promise<void> {
	const box = await target.boundingBox();
	if (!box) throw new Error('touchSpread: the element is not on screen');
	const client = await page.context().newCDPSession(page);
	const x = box.x + box.width / 2;
	const y = box.y + box.height / 2;
	const fingers = (gap: number) => [
		{ x: x - gap / 2, y, id: 1 },
		{ x: x + gap / 2, y, id: 2 },
	];
	const STEPS = 12;
	await client.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: fingers(from_px) });
	for (let i = 1; i <= STEPS; i += 1)
		await client.send('Input.dispatchTouchEvent', {
			type: 'touchMove',
			touchPoints: fingers(from_px + ((to_px - from_px) * i) / STEPS),
		});
	await client.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
	await client.detach();
}

/** As serve.mjs hands it to the server. */
export const PASSPHRASE = 'four teeth on a table';
export const ORIGIN = `http://localhost:${process.env.E2E_PORT ?? 4391}`;

/**
 * Signs in: what this page, or this `request`, asks for from here on comes from staff. One request; no page is opened.
 * Call it before the first `goto` of a page below /desk.
 */
export async function asStaff(whose: Page | APIRequestContext, origin: string = ORIGIN): Promise<void> {
	const request = 'request' in whose ? whose.request : whose;
	const response = await request.post(`${origin}/desk/session`, {
		data: { passphrase: PASSPHRASE },
		headers: { origin },
	});
	expect(response.ok(), await response.text()).toBe(true);
}

/** Signs in without a browser, and gives the header that says so: `fetch(url, { headers: { cookie } })`. */
export async function staffCookie(origin: string = ORIGIN): Promise<string> {
	const response = await fetch(`${origin}/desk/session`, {
		method: 'POST',
		body: JSON.stringify({ passphrase: PASSPHRASE }),
		headers: { 'content-type': 'application/json', origin },
	});
	const [cookie = ''] = response.headers.getSetCookie();
	expect(cookie).not.toBe('');
	return cookie.split(';', 1)[0];
}
