import { drawn, expect, ready, test } from './helpers';

// A day of visitors in a minute: what a tooth takes of memory it gives back.

// until then the engine still compiles what it runs often, and keeps what it compiles
const WARM_UP = 200;
const SWAPS = 300;

test('300 teeth laid on the table leave one context, and no memory behind', async ({ page }) => {
	test.setTimeout(240_000);
	// memory does not depend on the number of pixels, time does
	await page.setViewportSize({ width: 1280, height: 720 });
	await page.goto('/compare');
	await ready(page);
	await drawn(page);
	const client = await page.context().newCDPSession(page);
	await client.send('HeapProfiler.enable');
	await client.send('Performance.enable');

	/** Bytes of JavaScript objects that something still holds. */
	const heap = async () => {
		await client.send('HeapProfiler.collectGarbage');
		const { metrics } = await client.send('Performance.getMetrics');
		return metrics.find(({ name }) => name === 'JSHeapUsedSize')!.value;
	};
	const table = () =>
		page
			.locator('[data-place]')
			.evaluateAll((places) => places.map((place) => place.getAttribute('data-specimen')!));
	const stats = () => page.evaluate(() => window.toothTable!.stats());

	const start = await table();
	const all = await page
		.locator('button[data-specimen]')
		.evaluateAll((buttons) => buttons.map((button) => button.getAttribute('data-specimen')!));
	const others = all.filter((id) => !start.includes(id));
	expect(others.length).toBeGreaterThanOrEqual(10);

	/** Picks teeth from the drawer one after another; every sixth time waits until both are drawn, else only a frame. */
	const swap = (ids: string[]) =>
		page.evaluate(async (picks) => {
			const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
			for (const [i, id] of picks.entries()) {
				document.querySelector<HTMLElement>(`button[data-specimen="${id}"]`)!.click();
				await frame();
				while (i % 6 === 5 && document.querySelectorAll('[data-drawn="true"]').length < 2) await frame();
			}
		}, ids);
	const cycle = (count: number) => Array.from({ length: count }, (_, i) => others[i % others.length]);
	const back = async () => {
		await swap(start);
		await drawn(page);
		await expect.poll(table).toEqual(start);
		await expect.poll(async () => (await stats()).full).toBe(true);
	};

	await swap(cycle(WARM_UP));
	await back();
	const [before, heapBefore] = [await stats(), await heap()];

	await swap(cycle(SWAPS - start.length));
	await back();
	const [after, heapAfter] = [await stats(), await heap()];

	expect(after.geometries).toBe(before.geometries);
	expect(after.textures).toBe(before.textures);
	expect(after.contexts).toBe(1);
	expect(after.contextLosses).toBe(0);
	expect(after.views).toBe(before.views);
	expect(after.frames).toBeGreaterThan(before.frames + SWAPS / 6);
	expect(await page.locator('canvas').count()).toBe(1);
	expect(heapAfter / heapBefore).toBeLessThan(1.05);
	await client.detach();
});
