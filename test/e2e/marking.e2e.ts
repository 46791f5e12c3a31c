import { readFile, rm, cp, writeFile } from 'node:fs/promises';
import http from 'node:http';
import path from 'node:path';
import { AxeBuilder } from './axe';
import type { Locator, Page } from '@playwright/test';
import sharp from 'sharp';
import { parse } from 'yaml';
import { orient } from '../../src/lib/domain/mesh/orient';
import { sculpt } from '../../src/lib/domain/tooth/sculpt';
import { allowFault, asStaff, CONTENT, expect, ready, staffCookie, test, touchDrag } from './helpers';

// A curator marks a scan and a model at the desk, by mouse, by touch and by keyboard.

const SCAN = 'skm-9001';
const MODEL = 'skm-0104';
const LANGUAGES = ['en', 'fr', 'es'];
const fileOf = (id: string) => path.join(CONTENT, 'specimens', id, 'specimen.yaml');
const FACTS = `# Laid on the desk for marking.
accession: SKM 9001   # as on the box
group: mosasaurus
part: rooted-tooth
preservation: tan
bed: upper-marl
identified: { by: Skerrow Museum, certainty: unsure }   # not settled
shape:
  scan:
    file: scan.stl
    units: mm   # asked whoever made it
licence: http://creativecommons.org/licenses/by/4.0/
rights_holder: Skerrow Museum
sources: [leidy-1865]
`;
const FORM = {
	crownHeight_mm: 26,
	baseLength_mm: 14,
	baseWidth_mm: 11,
	sections: [{ at: 0, shape: 'oval' as const }],
	taper: 'bullet' as const,
	curve: { distal_deg: 16, lingual_deg: 6, startsAt: 0.2 },
	tipRadius_mm: 0.8,
	carinae: [],
	root: { state: 'full' as const, length_mm: 24, swelling: 1.2, folded: false },
};

/** A rooted tooth as a scanner leaves it: askew and far from the origin, STL. */
function scanFile(): Buffer {
	const sculpted = sculpt(FORM, { detail: 'draft' });
	if (!sculpted.ok) throw new Error(JSON.stringify(sculpted.problem));
	const [c, s] = [Math.cos(0.7), Math.sin(0.7)];
	const rows = [
		[c, -s, 0],
		[0, 0, -1],
		[s, c, 0],
	] as const;
	const { positions, indices } = orient(sculpted.value.mesh, rows, [60, -20, 35]);
	const file = Buffer.alloc(84 + (indices.length / 3) * 50);
	file.writeUInt32LE(indices.length / 3, 80);
	for (let k = 0; k < indices.length; k += 1) {
		const at = 84 + Math.floor(k / 3) * 50 + 12 + (k % 3) * 12;
		for (let axis = 0; axis < 3; axis += 1)
			file.writeFloatLE(positions[indices[k] * 3 + axis], at + axis * 4);
	}
	return file;
}

test.beforeEach(({ page }) => asStaff(page));

/** Lays the scan on the desk, runs the test, and clears it away. */
async function withScan(page: Page, run: () => Promise<void>, facts = FACTS): Promise<void> {
	const folder = path.join(CONTENT, 'specimens', SCAN);
	try {
		await cp(path.join(CONTENT, 'specimens', MODEL), folder, { recursive: true });
		for (const lang of LANGUAGES) {
			const label = path.join(folder, `label.${lang}.md`);
			const words = await readFile(label, 'utf8');
			await writeFile(label, words.replace(/^features:\n(?: {2}.*\n)+/m, ''));
		}
		await writeFile(path.join(folder, 'scan.stl'), scanFile());
		await writeFile(path.join(folder, 'specimen.yaml'), facts);
		await expect(async () => {
			await page.goto(`/desk/mark/${SCAN}`);
			await expect(application(page)).toBeVisible({ timeout: 1000 });
		}).toPass({ timeout: 45_000 });
		await shown(page);
		await run();
	} finally {
		await rm(folder, { recursive: true, force: true });
	}
	await expect.poll(async () => (await health(page)).problems.errors).toBe(0);
}

const health = async (page: Page) =>
	(await (await page.request.get('/healthz')).json()) as { ok: boolean; problems: { errors: number } };
/** In a row of the desk: the way to its marks. */
const markOf = (row: Locator): Locator => row.getByRole('link', { name: /^Mark/ });
const application = (page: Page): Locator => page.getByRole('application');
const save = (page: Page) => page.getByRole('button', { name: 'Save …' });

/** The tooth stands in 3D and the stage rests. */
async function shown(page: Page): Promise<void> {
	await ready(page);
	await expect(application(page)).toHaveAttribute('data-drawn', 'true');
	await expect.poll(() => page.evaluate(() => window.toothTable?.stats().moving)).toBe(false);
}

interface Row {
	y: number;
	left: number;
	right: number;
}
/** Where the tooth is seen in its view: first and last bright place of each row, px of the window. */
async function outline(page: Page): Promise<Row[]> {
	const target = application(page);
	const box = await target.boundingBox();
	if (!box) throw new Error('outline: the view is not on screen');
	const { data, info } = await sharp(await target.screenshot())
		.greyscale()
		.raw()
		.toBuffer({ resolveWithObject: true });
	const rows: Row[] = [];
	for (let y = 0; y < info.height * 0.9; y += 1) {
		let left = -1;
		let right = -1;
		for (let x = 0; x < info.width; x += 1) {
			if (data[(y * info.width + x) * info.channels] < 70) continue;
			if (left < 0) left = x;
			right = x;
		}
		if (left >= 0) rows.push({ y: box.y + y, left: box.x + left, right: box.x + right });
	}
	return rows;
}

type Tap = (x: number, y: number) => Promise<void>;
async function putCrown(page: Page, tap: Tap): Promise<void> {
	// square to the side, as the exhibit holds it: tip up, front left, back right
	await page.getByRole('button', { name: 'Bring the top towards you' }).click();
	await page.getByRole('button', { name: 'Turn the top away from you' }).click();
	await shown(page);
	const rows = await outline(page);
	const tip = rows[4];
	const base = rows[Math.round(rows.length * 0.52)];
	// on a slow machine a tap may last too long to be one
	const put = (step: string, x: number, y: number) =>
		expect(async () => {
			await tap(x, y);
			await expect(page.locator(`[data-step="${step}"]`)).toHaveAttribute('data-put', 'true', {
				timeout: 2000,
			});
		}).toPass({ timeout: 20_000 });
	await put('apex', (tip.left + tip.right) / 2, tip.y);
	await expect(page.locator('[data-step="mesial"]')).toHaveAttribute('aria-pressed', 'true');
	await put('mesial', base.left + 6, base.y);
	await expect(page.locator('[data-step="distal"]')).toHaveAttribute('aria-pressed', 'true');
	await put('distal', base.right - 6, base.y);
	for (const step of ['apex', 'mesial', 'distal'])
		await expect(page.locator(`[data-step="${step}"]`)).toHaveAttribute('data-put', 'true');
}
const length = async (page: Page, key: string) =>
	Number.parseFloat(await page.locator(`[data-length="${key}"] dd`).innerText());
const apart = (a: number[], b: number[]) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

async function saveAll(page: Page): Promise<void> {
	await save(page).click();
	await expect(page.getByRole('dialog')).toBeVisible();
	await page.getByRole('dialog').getByRole('button', { name: 'Save' }).click();
	await expect(page.locator('[data-saved="shown"]')).toBeVisible({ timeout: 30_000 });
}

test('a scan that cannot be measured opens at the desk, and is shown once it is marked', async ({ page }) => {
	test.setTimeout(150_000);
	// marks in one line: no crown stands on them
	const wrong = FACTS.replace(
		'    units: mm',
		'    crown: { apex_mm: [60, 0, 35], base_mesial_mm: [50, 0, 35], base_distal_mm: [70, 0, 35] }\n    units: mm',
	);
	await withScan(
		page,
		async () => {
			await page.goto('/desk');
			await ready(page);
			const listed = page.locator(`tr[data-specimen="${SCAN}"]`);
			await expect(listed).toContainText('needs marks on its crown');
			await expect(listed.locator('img')).toBeVisible();
			await markOf(listed).click();
			await page.waitForURL(`**/desk/mark/${SCAN}**`);
			await shown(page);
			await expect(page.locator('[data-needs-marks]')).toBeVisible();
			await expect(page.locator('.warn')).toContainText('could not be measured');
			const { violations } = await new AxeBuilder({ page }).analyze();
			expect(violations.map(({ id }) => id)).toEqual([]);

			await page.getByRole('button', { name: 'Clear all points of the crown' }).click();
			await putCrown(page, (x, y) => page.mouse.click(x, y));
			await saveAll(page);
			await expect(page.locator('[data-needs-marks]')).toHaveCount(0);
			await expect(page.locator('.warn')).toHaveCount(0);
			await expect(page.getByRole('button', { name: 'Places', exact: true })).toBeVisible();
			await page.goto('/desk');
			await expect(page.locator(`tr[data-specimen="${SCAN}"]`)).toContainText('crown marked');
		},
		wrong,
	);
});

for (const by of ['mouse', 'touch'] as const)
	test(`${by}: a scan's crown and a feature are marked, saved, and shown`, async ({ page }) => {
		test.setTimeout(150_000);
		const tap: Tap = (x, y) => (by === 'mouse' ? page.mouse.click(x, y) : page.touchscreen.tap(x, y));
		await withScan(page, async () => {
			await page.goto('/desk');
			await ready(page);
			const entry = page.locator(`tr[data-specimen="${SCAN}"]`);
			await expect(entry).toContainText('crown not marked');
			await (by === 'mouse' ? markOf(entry).click() : markOf(entry).tap());
			await page.waitForURL(`**/desk/mark/${SCAN}**`);
			await shown(page);
			await expect(save(page)).toBeDisabled();

			// turning is not marking
			if (by === 'touch') await touchDrag(page, application(page), 120, 10);
			await expect(page.locator('[data-pin]')).toHaveCount(0);
			await putCrown(page, tap);
			await expect(page.locator('[data-pin]')).toHaveCount(3);

			// a tap again moves the point; undo brings it back
			const before = await length(page, 'measure_length');
			const rows = await outline(page);
			const base = rows[Math.round(rows.length * 0.52)];
			await page.locator('[data-step="distal"]').click();
			await tap((base.left + base.right) / 2, base.y);
			await expect.poll(() => length(page, 'measure_length')).toBeLessThan(before - 1);
			await page.getByRole('button', { name: 'Undo' }).click();
			await expect.poll(() => length(page, 'measure_length')).toBe(before);

			await page.getByRole('button', { name: 'Places', exact: true }).click();
			await page
				.locator('label')
				.filter({ hasText: /^ridge$/ })
				.click();
			await page.getByRole('textbox').fill('front-ridge');
			const middle = rows[Math.round(rows.length * 0.25)];
			await tap((middle.left + middle.right) / 2, middle.y);
			await expect(page.locator('[data-feature="front-ridge"]')).toBeVisible();
			await page.getByRole('button', { name: 'Crown', exact: true }).click();
			const height = await length(page, 'measure_height');
			await saveAll(page);

			const text = await readFile(fileOf(SCAN), 'utf8');
			for (const note of [
				'# Laid on the desk',
				'# as on the box',
				'# not settled',
				'# asked whoever made it',
			])
				expect(text).toContain(note);
			const facts = parse(text) as {
				shape: { scan: { file: string; units: string; crown: Record<string, number[]> } };
				features: { id: string; kind: string; at: number; where: number }[];
			};
			const { crown, ...scan } = facts.shape.scan;
			expect(scan).toEqual({ file: 'scan.stl', units: 'mm' });
			expect(apart(crown.apex_mm, crown.base_distal_mm)).toBeCloseTo(height, 0);
			expect(apart(crown.base_mesial_mm, crown.base_distal_mm)).toBeCloseTo(before, 0);
			// in the file's own frame, which lies far from the tooth frame
			expect(apart(crown.apex_mm, [60, -20, 35])).toBeLessThan(60);
			expect(Math.hypot(...(crown.apex_mm as [number, number, number]))).toBeGreaterThan(30);
			expect(facts.features).toHaveLength(1);
			expect(facts.features[0]).toMatchObject({ id: 'front-ridge', kind: 'ridge' });
			expect(facts.features[0].at).toBeGreaterThan(0.3);
			expect(facts.features[0].at).toBeLessThan(0.75);

			// the desk says that the place has no name yet, until the label gives it one
			await expect(
				page.getByText('The feature "front-ridge" of specimen.yaml has no name here'),
			).toBeVisible();
			const label = path.join(CONTENT, 'specimens', SCAN, 'label.en.md');
			const words = await readFile(label, 'utf8');
			await writeFile(label, words.replace(/^---\n/, '---\nfeatures:\n  front-ridge: A ridge in front\n'));
			await expect.poll(async () => (await health(page)).problems.errors).toBe(0);

			// the exhibit measures from these marks now
			await page.goto(`/compare?teeth=${SCAN}`);
			await ready(page);
			const pane = page.locator(`[data-specimen="${SCAN}"]`).first();
			const measured = await pane.locator('[data-measure="measure_length"] dd').innerText();
			expect(Number.parseFloat(measured)).toBeCloseTo(before, 0);
			await page.goto('/desk');
			await expect(page.locator(`tr[data-specimen="${SCAN}"]`)).toContainText('scan, crown marked');
		});
	});

test('keyboard: marks, nudges, undoes, renames, clears', async ({ page }) => {
	test.setTimeout(150_000);
	await withScan(page, async () => {
		await page.getByRole('button', { name: 'Start from the points' }).press('Enter');
		await expect(page.locator('[data-pin]')).toHaveCount(3);
		const before = await length(page, 'measure_height');
		const pin = page.locator('[data-pin="crown-apex"]');
		await pin.focus();
		await pin.press('Shift+ArrowRight');
		await expect.poll(() => length(page, 'measure_height')).not.toBe(before);
		await expect(pin).toBeFocused();
		const far = await pin.boundingBox();
		await pin.press('ArrowRight');
		await pin.press('ArrowRight');
		await expect.poll(async () => (await pin.boundingBox())?.x).not.toBe(far?.x);
		for (let i = 0; i < 3; i += 1) await page.keyboard.press('Control+z');
		await expect.poll(() => length(page, 'measure_height')).toBe(before);
		await page.keyboard.press('Control+y');
		await expect.poll(() => length(page, 'measure_height')).not.toBe(before);

		// a cross in the view puts the outer side
		await expect(page.locator('[data-step="labial"]')).toHaveAttribute('data-put', 'false');
		await page.locator('[data-step="labial"]').press('Enter');
		await application(page).focus();
		await page.keyboard.press('Enter');
		await page.keyboard.press('Shift+ArrowUp');
		await page.keyboard.press('Enter');
		await expect(page.locator('[data-step="labial"]')).toHaveAttribute('data-put', 'true');
		await page.getByRole('button', { name: 'Remove: Outer side (labial)' }).press('Enter');
		await expect(page.locator('[data-step="labial"]')).toHaveAttribute('data-put', 'false');

		// places: a bad short name is refused, a good one can be changed
		await page.getByRole('button', { name: 'Places', exact: true }).press('Enter');
		await page.getByRole('textbox').fill('Front Edge');
		await expect(page.getByText('Only lower-case letters')).toBeVisible();
		await application(page).focus();
		await page.keyboard.press('Enter');
		await page.keyboard.press('Enter');
		await expect(page.locator('[data-feature]')).toHaveCount(0);
		await page.getByRole('textbox').fill('edge');
		await application(page).focus();
		await page.keyboard.press('Enter');
		await page.keyboard.press('Enter');
		await expect(page.locator('[data-feature="edge"]')).toBeVisible();
		await page.getByRole('button', { name: 'Rename: edge' }).press('Enter');
		await page.keyboard.type('front-edge');
		await page.keyboard.press('Enter');
		await expect(page.locator('[data-feature="front-edge"]')).toBeVisible();
		await page.getByRole('button', { name: 'Remove: front-edge' }).press('Enter');
		await expect(page.locator('[data-feature]')).toHaveCount(0);

		await page.getByRole('button', { name: 'Crown', exact: true }).press('Enter');
		await page.getByRole('button', { name: 'Clear all points of the crown' }).press('Enter');
		await expect(page.locator('[data-pin]')).toHaveCount(0);
		expect(await readFile(fileOf(SCAN), 'utf8')).toBe(FACTS);
	});
});

test('a model takes features only; a file changed underneath is not written over', async ({ page }) => {
	test.setTimeout(120_000);
	const before = await readFile(fileOf(MODEL), 'utf8');
	try {
		await page.goto(`/desk/mark/${MODEL}`);
		await shown(page);
		await expect(page.getByText('This tooth is a model')).toBeVisible();
		await expect(page.locator('[data-step]')).toHaveCount(0);
		const listed = await page.locator('[data-feature]').count();
		await expect(page.locator('[data-pin]')).toHaveCount(listed);
		await page.getByRole('textbox').fill('new-place');
		const box = await application(page).boundingBox();
		if (!box) throw new Error('no view');
		const tap = () => page.mouse.click(box.x + box.width / 2, box.y + box.height * 0.45);
		await tap();
		await expect(page.locator('[data-feature="new-place"]')).toBeVisible();

		// a pin is dragged along the surface
		await expect(page.locator('[data-pin]')).toHaveCount(listed + 1);
		const pin = page.locator('[data-pin]').last();
		const was = await page.locator('[data-feature="new-place"] .hint').innerText();
		const at = await pin.boundingBox();
		if (!at) throw new Error('no pin');
		await page.mouse.move(at.x + 22, at.y + 22);
		await page.mouse.down();
		await page.mouse.move(at.x + 22, at.y + 82, { steps: 6 });
		await page.mouse.up();
		await expect(page.locator('[data-feature="new-place"] .hint')).not.toHaveText(was);

		// somebody saves the file meanwhile
		const edited = before.replace('certainty: likely', 'certainty: unsure');
		expect(edited).not.toBe(before);
		await writeFile(fileOf(MODEL), edited);
		await expect(page.getByText('changed by someone else')).toBeVisible();
		expect(await readFile(fileOf(MODEL), 'utf8')).toBe(edited);
		await page.getByRole('button', { name: 'Load again' }).click();
		await expect(page.locator('[data-feature="new-place"]')).toHaveCount(0);

		await page.getByRole('textbox').fill('new-place');
		await tap();
		await saveAll(page);
		const saved = await readFile(fileOf(MODEL), 'utf8');
		expect(saved).toContain('# who says so');
		const { features } = parse(saved) as { features: { id: string }[] };
		expect(features.map(({ id }) => id)).toEqual([
			...(parse(edited) as { features: { id: string }[] }).features.map(({ id }) => id),
			'new-place',
		]);
	} finally {
		await writeFile(fileOf(MODEL), before);
	}
});

test('the server refuses what was read from an older file', async ({ page }) => {
	allowFault(page, /409/);
	const before = await readFile(fileOf(MODEL), 'utf8');
	try {
		await page.goto(`/desk/mark/${MODEL}`);
		await shown(page);
		// this page hears of no change any more
		await page.route('**/__data.json**', (route) => route.abort());
		const box = await application(page).boundingBox();
		if (!box) throw new Error('no view');
		await page.mouse.click(box.x + box.width / 2, box.y + box.height * 0.45);
		const edited = `${before}# added meanwhile\n`;
		await writeFile(fileOf(MODEL), edited);
		await save(page).click();
		await page.getByRole('dialog').getByRole('button', { name: 'Save' }).click();
		await expect(page.getByText('changed by someone else')).toBeVisible();
		expect(await readFile(fileOf(MODEL), 'utf8')).toBe(edited);
	} finally {
		await writeFile(fileOf(MODEL), before);
	}
});

test('a mistake in the file is told with its remedy, and the page follows when it is mended', async ({
	page,
}) => {
	const folder = path.join(CONTENT, 'specimens', 'skm-9002');
	try {
		await cp(path.join(CONTENT, 'specimens', MODEL), folder, { recursive: true });
		const good = (await readFile(path.join(folder, 'specimen.yaml'), 'utf8')).replace('SKM 0104', 'SKM 9002');
		await writeFile(path.join(folder, 'specimen.yaml'), good.replace('group:', 'grupo:'));
		await page.goto('/desk');
		const entry = page.locator('tr[data-specimen="skm-9002"]');
		await expect(entry).toContainText('mistake');
		await markOf(entry).click();
		await expect(page.getByText('"grupo" is not known here')).toBeVisible();
		await writeFile(path.join(folder, 'specimen.yaml'), good);
		await shown(page);
		await expect(page.getByRole('heading', { level: 1 })).toHaveText('Mark SKM 9002');
	} finally {
		await rm(folder, { recursive: true, force: true });
	}
});

for (const lang of LANGUAGES)
	test(`axe finds nothing at the desk (${lang})`, async ({ page }) => {
		for (const address of ['/desk', `/desk/mark/${MODEL}`]) {
			await page.goto(`${address}?lang=${lang}`);
			if (address === '/desk') await ready(page);
			else await shown(page);
			const { violations } = await new AxeBuilder({ page })
				.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
				.analyze();
			expect(violations.map(({ id, nodes }) => `${address} ${id}: ${nodes[0]?.html}`)).toEqual([]);
			const small = await page.locator('a, button').evaluateAll((elements) =>
				elements
					.map((element) => ({ box: element.getBoundingClientRect(), html: element.outerHTML.slice(0, 90) }))
					.filter(({ box }) => box.width > 0 && (box.height < 43.9 || box.width < 43.9))
					.map(({ html }) => html),
			);
			expect(small).toEqual([]);
			expect(
				await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
			).toBeLessThanOrEqual(0);
		}
	});

test('there is no desk for a request that came by another name', async ({ page, baseURL }) => {
	const cookie = await staffCookie();
	const answer = (address: string, host: string) =>
		new Promise<{ status: number | undefined; body: string }>((resolve, reject) => {
			http
				.get(new URL(address, baseURL), { headers: { host, cookie } }, async (response) => {
					let body = '';
					for await (const part of response) body += String(part);
					resolve({ status: response.statusCode, body });
				})
				.on('error', reject);
		});
	const own = new URL(String(baseURL)).host;
	for (const address of ['/desk', `/desk/mark/${MODEL}`]) {
		expect((await answer(address, own)).status, address).toBe(200);
		expect((await answer(address, 'museum.example')).status, address).toBe(404);
	}
	// what the router asks for has its own way of saying 404
	const data = `/desk/mark/${MODEL}/__data.json`;
	expect((await answer(data, own)).body).toContain('"marking"');
	const refused = (await answer(data, 'museum.example')).body;
	expect(refused).toContain('"status":404');
	expect(refused).not.toContain('"marking"');
	allowFault(page, /404/);
	expect((await page.goto('/desk/mark/no-such-tooth'))?.status()).toBe(404);
});
