import { cp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { CONTENT, expect, ready, test } from './helpers';

// A museum's whole drawer: 300 specimens, copies of the demo's.

const SPECIMENS = 300;
const FOLDER = path.join(CONTENT, 'specimens');
const copies: string[] = [];

async function fill(): Promise<void> {
	const ids = (await readdir(FOLDER)).sort();
	for (let i = ids.length; i < SPECIMENS; i += 1) {
		const id = `copy-${i}`;
		copies.push(path.join(FOLDER, id));
		await cp(path.join(FOLDER, ids[i % ids.length]), path.join(FOLDER, id), { recursive: true });
		const facts = path.join(FOLDER, id, 'specimen.yaml');
		const text = await readFile(facts, 'utf8');
		await writeFile(facts, text.replace(/^accession: .*$/m, `accession: COPY ${i}`));
	}
}

test.afterEach(async () => {
	for (const copy of copies.splice(0)) await rm(copy, { recursive: true, force: true });
});

test('a drawer of 300 teeth opens, is sorted and picked from without a wait', async ({ page }) => {
	test.setTimeout(180_000);
	await fill();
	const tiles = page.locator('[data-drawer] [data-specimen]');
	await expect(async () => {
		await page.goto('/compare');
		await ready(page);
		await expect(tiles).toHaveCount(SPECIMENS, { timeout: 500 });
	}).toPass({ timeout: 90_000 });

	const note = (what: string, ms: number) =>
		test.info().annotations.push({ type: what, description: `${Math.round(ms)} ms` });
	const opened = Date.now();
	await page.goto('/compare');
	await ready(page);
	note('open', Date.now() - opened);
	// the goal for a cold start is 2 s; another browser and a server run on the same two cores here
	expect(Date.now() - opened).toBeLessThan(6000);

	// pictures out of sight are not fetched
	const fetched = await page.evaluate(
		() => performance.getEntriesByType('resource').filter(({ name }) => name.includes('/pictures/')).length,
	);
	expect(fetched).toBeLessThan(60);

	/** From a click to the next frame after it, ms. */
	const timed = (selector: string) =>
		page.evaluate(async (wanted) => {
			const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
			await frame();
			const from = performance.now();
			document.querySelector<HTMLElement>(wanted)!.click();
			await frame();
			await frame();
			return performance.now() - from;
		}, selector);
	const facet = page.locator('.facet > button').first();
	note('panel', await timed('.facet > button'));
	await expect(facet).toHaveAttribute('aria-expanded', 'true');
	const filter = await timed('.facet .values button:nth-child(2)');
	note('filter', filter);
	expect(filter).toBeLessThan(400);
	const count = Number(
		/\d+/.exec(await page.locator('.facet .values button:nth-child(2) .count').innerText()),
	);
	await expect(tiles).toHaveCount(count);
	await page.keyboard.press('Escape');
	const all = await timed('.bar .clear');
	note('all again', all);
	expect(all).toBeLessThan(600);
	await expect(tiles).toHaveCount(SPECIMENS);

	// scrolled to its end by keys, a tooth is picked there
	await tiles.first().focus();
	const ended = Date.now();
	await page.keyboard.press('End');
	await expect(tiles.last()).toBeFocused();
	await expect(tiles.last()).toBeInViewport();
	note('end', Date.now() - ended);
	const id = await tiles.last().getAttribute('data-specimen');
	const picked = Date.now();
	await page.keyboard.press('Enter');
	await expect(
		page.locator(`[data-place="1"][data-specimen="${id}"]`).getByRole('application'),
	).toHaveAttribute('data-drawn', 'true');
	note('pick', Date.now() - picked);
	expect(Date.now() - picked).toBeLessThan(3000);

	await page.locator('#shelf-tab-differ').tap();
	const told = Date.now();
	await expect(page.locator('.differences')).toContainText(/\w{3}/);
	note('tell', Date.now() - told);
	expect(Date.now() - told).toBeLessThan(3000);
});
