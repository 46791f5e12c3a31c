import sharp from 'sharp';
import type { Page } from '@playwright/test';
import { drawn, expect, ready, test, view } from './helpers';

// What a picture of a tooth must show, whatever the renderer rounds: facts, not golden files.

interface Picture {
	width: number;
	height: number;
	/** luminance per pixel, 0 .. 255 */
	light: Float32Array;
}

const quantile = (values: Float32Array, q: number) =>
	values.slice().sort()[Math.floor(q * (values.length - 1))];
const mean = (values: Float32Array) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** One view as it stands on screen, with nothing but tooth, shadow and felt in it. */
async function picture(page: Page, place: 1 | 2): Promise<Picture> {
	const box = (await view(page, place).boundingBox())!;
	const { data, info } = await sharp(await page.screenshot({ clip: box }))
		.removeAlpha()
		.raw()
		.toBuffer({ resolveWithObject: true });
	const light = new Float32Array(info.width * info.height);
	for (let i = 0; i < light.length; i++)
		light[i] = 0.2126 * data[i * 3] + 0.7152 * data[i * 3 + 1] + 0.0722 * data[i * 3 + 2];
	return { width: info.width, height: info.height, light };
}

/** Lays two teeth on the table and makes everything else transparent. */
async function lay(page: Page, teeth: readonly [string, string]) {
	await page.goto(`/compare?teeth=${teeth.join(',')}`);
	await ready(page);
	await drawn(page);
	await page.evaluate(() => {
		for (const element of document.querySelectorAll<HTMLElement>('main *, footer *'))
			element.style.opacity = '0';
	});
	await full(page);
}

const stats = (page: Page) => page.evaluate(() => window.toothTable!.stats());
const full = (page: Page) =>
	expect.poll(async () => [(await stats(page)).full, (await stats(page)).moving]).toEqual([true, false]);

/** The tooth in a picture: per row what lies between its outermost bright pixels. */
function tooth({ width, height, light }: Picture) {
	const felt = felted({ width, height, light });
	const inside = new Uint8Array(light.length);
	let [left, right, top, bottom] = [width, 0, height, 0];
	for (let y = 0; y < height; y++) {
		let [from, to] = [-1, -1];
		for (let x = 0; x < width; x++) {
			if (light[y * width + x] < felt + 22) continue;
			if (from < 0) from = x;
			to = x;
		}
		if (from < 0) continue;
		inside.fill(1, y * width + from, y * width + to + 1);
		[left, right] = [Math.min(left, from), Math.max(right, to)];
		[top, bottom] = [Math.min(top, y), Math.max(bottom, y)];
	}
	const own = light.filter((_, i) => inside[i]);
	return { own, area: own.length, box: { left, right, top, bottom } };
}

/** Luminance of the felt: the view's left border is far from tooth and shadow. */
function felted({ width, height, light }: Picture): number {
	const border = Float32Array.from(
		{ length: height * 10 },
		(_, i) => light[Math.floor(i / 10) * width + (i % 10)],
	);
	return quantile(border, 0.5);
}

/** Mean luminance of a small square at a place given in shares of the tooth's box. */
function spot(image: Picture, at: readonly [x: number, y: number]): number {
	const { left, right, top, bottom } = tooth(image).box;
	const [cx, cy] = [Math.round(left + at[0] * (right - left)), Math.round(top + at[1] * (bottom - top))];
	const patch: number[] = [];
	for (let y = cy - 6; y <= cy + 6; y++)
		for (let x = cx - 6; x <= cx + 6; x++) patch.push(image.light[y * image.width + x]);
	return mean(Float32Array.from(patch));
}

/** Standard deviation across rows of luminance less its mean over `span` pixels, in the middle of the tooth. */
function ridgeContrast(image: Picture, span: number): number {
	const { left, right, top, bottom } = tooth(image).box;
	let [sum, n] = [0, 0];
	for (let y = Math.round(top + 0.5 * (bottom - top)); y < top + 0.85 * (bottom - top); y++) {
		const from = Math.round(left + 0.25 * (right - left));
		for (let x = from; x < left + 0.75 * (right - left); x++) {
			const row = image.light.subarray(y * image.width + x - span, y * image.width + x + span + 1);
			sum += (image.light[y * image.width + x] - mean(row)) ** 2;
			n++;
		}
	}
	return Math.sqrt(sum / n);
}

/** Drags the lamp to a place on its dial, shares of the dial's radius; the rim is raking light. */
async function lampTo(page: Page, x: number, y: number) {
	const box = (await page.locator('[data-lamp]').boundingBox())!;
	const [cx, cy] = [box.x + box.width / 2, box.y + box.height / 2];
	await page.mouse.move(cx, cy);
	await page.mouse.down();
	await page.mouse.move(cx + (x * box.width) / 2, cy - (y * box.height) / 2, { steps: 4 });
	await page.mouse.up();
	await full(page);
}

for (const teeth of [
	['skm-0107', 'skm-0161'],
	['skm-0112', 'skm-0143'],
] as const) {
	test(`${teeth.join(' and ')} are the brightest things in sight, and their enamel shines`, async ({
		page,
	}) => {
		await lay(page, teeth);
		for (const place of [1, 2] as const) {
			const image = await picture(page, place);
			const { own, area } = tooth(image);
			expect(area / image.light.length).toBeGreaterThan(0.04);
			// the felt is at about 20 of 255
			expect(mean(own)).toBeGreaterThan(felted(image) + 60);
			const median = quantile(own, 0.5);
			const brightest = quantile(own, 0.99);
			const highlight = mean(own.filter((value) => value >= brightest));
			expect(highlight).toBeGreaterThan(1.3 * median);
			// nothing is burnt out
			expect(quantile(own, 0.995)).toBeLessThan(253);
		}
	});
}

test('a worn facet is lighter than the enamel round it', async ({ page }) => {
	await lay(page, ['skm-0104', 'skm-0112']);
	const image = await picture(page, 1);
	const facet = spot(image, [0.42, 0.26]);
	for (const enamel of [
		[0.75, 0.45],
		[0.36, 0.68],
	] as const)
		expect(facet).toBeGreaterThan(1.2 * spot(image, enamel));
});

test('raking light brings the ridges out', async ({ page }) => {
	await lay(page, ['skm-0137', 'skm-0112']);
	await lampTo(page, 0, 0);
	const front = await picture(page, 1);
	await lampTo(page, -1, 0.1);
	const raking = await picture(page, 1);
	expect(ridgeContrast(raking, 8)).toBeGreaterThan(1.6 * ridgeContrast(front, 8));
});

test('nothing jumps when full quality comes: brightness and silhouette stay', async ({ page }) => {
	await lay(page, ['skm-0107', 'skm-0143']);
	const dial = (await page.locator('[data-lamp]').boundingBox())!;
	const [x, y] = [dial.x + dial.width * 0.33, dial.y + dial.height * 0.4];
	await page.mouse.move(x, y);
	await page.mouse.down();
	// a hand that holds the lamp and trembles: far less than anyone could see, but it moves
	await page.evaluate(
		([clientX, clientY]) => {
			let n = 0;
			const tremble = setInterval(() => {
				const held = { pointerId: 1, pointerType: 'mouse', buttons: 1, bubbles: true };
				const at = { clientX: clientX + (n++ % 2) * 0.01, clientY };
				document
					.querySelector('[data-lamp]')!
					.dispatchEvent(new PointerEvent('pointermove', { ...held, ...at }));
			}, 10);
			(window as unknown as { stopTrembling: () => void }).stopTrembling = () => clearInterval(tremble);
		},
		[x, y] as const,
	);
	await expect.poll(async () => (await stats(page)).full).toBe(false);
	const moving = [await picture(page, 1), await picture(page, 2)];
	expect((await stats(page)).full).toBe(false);
	await page.evaluate(() => (window as unknown as { stopTrembling: () => void }).stopTrembling());
	await full(page);
	for (const place of [1, 2] as const) {
		const [was, is] = [tooth(moving[place - 1]), tooth(await picture(page, place))];
		expect(Math.abs(mean(was.own) / mean(is.own) - 1)).toBeLessThan(0.05);
		expect(Math.abs(was.area / is.area - 1)).toBeLessThan(0.02);
	}
	await page.mouse.up();
});
