import type { Browser } from '@playwright/test';
import type { Served } from './server';

interface Row {
	what: string;
	measured: string;
	goal: string;
	beside: string;
}

/** Times between frames while a hand drags the time slider of the jaw through its ten years, there and back. */
export async function scrubJaw(served: Served, browser: Browser): Promise<Row[]> {
	const context = await browser.newContext({ viewport: { width: 1920, height: 1080 } });
	// tsx marks functions with this helper, which pages do not have
	await context.addInitScript('globalThis.__name = (made) => made');
	const page = await context.newPage();
	await page.goto(`${served.url}/replacement?step=jaw`);
	await page.locator('[data-ready]').waitFor();
	await page.waitForTimeout(2500);
	const slider = page.locator('.time input[type="range"]').last();
	const box = await slider.boundingBox();
	if (!box) throw new Error('scrubJaw: no time slider');
	await page.evaluate(() => {
		const times: number[] = [];
		(window as unknown as { frameTimes: number[] }).frameTimes = times;
		let last = performance.now();
		const step = (now: number) => {
			times.push(now - last);
			last = now;
			if (times.length < 10_000) requestAnimationFrame(step);
		};
		requestAnimationFrame(step);
	});
	const y = box.y + box.height / 2;
	await page.mouse.move(box.x + 30, y);
	await page.mouse.down();
	const FOR_MS = 5000;
	const from = performance.now();
	const values = new Set<string>();
	for (let passed = 0; passed < FOR_MS; passed = performance.now() - from) {
		const share = 0.5 - 0.5 * Math.cos((passed / FOR_MS) * 2 * Math.PI);
		await page.mouse.move(box.x + 30 + (box.width - 60) * share, y);
		values.add(await slider.inputValue());
	}
	await page.mouse.up();
	const times = await page.evaluate(() => (window as unknown as { frameTimes: number[] }).frameTimes);
	await context.close();
	if (values.size < 10) throw new Error('scrubJaw: the slider did not follow the hand');
	const sorted = times.slice(5).sort((a, b) => a - b);
	const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))];
	return [
		{
			what: 'Scrubbing ten years of a jaw, no graphics card: median frame',
			measured: `${Math.round(at(0.5))} ms`,
			goal: 'at most 33 ms',
			beside: `95 of 100 frames within ${Math.round(at(0.95))} ms`,
		},
	];
}
