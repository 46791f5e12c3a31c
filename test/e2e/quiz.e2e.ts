import { spawn, type ChildProcess } from 'node:child_process';
import { cpSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { AxeBuilder } from './axe';
import type { Locator, Page } from '@playwright/test';
import Database from 'libsql';
import { readRoundCode, roundCode } from '../../src/lib/domain/quiz/roundCode';
import { asStaff, CONTENT, expect, ready, staffCookie, test } from './helpers';
import { pdfBars, pdfPages } from './pdfBars';

test.describe.configure({ timeout: 240_000 });

const DATA = path.resolve(CONTENT, '../data');
const asking = (page: Page): Locator => page.locator('.asking');
const phase = (page: Page, name: string): Locator => page.locator(`.asking[data-phase="${name}"]`);

/** How a teacher's hand does a thing: by a touch, or by keys alone. */
type Hand = (target: Locator) => Promise<void>;
const byTouch: Hand = (target) => target.tap();

/** Presses Tab until the wanted control has the focus, then Enter: nothing is clicked, and nothing is focused by script. */
function byKeys(page: Page): Hand {
	return async (target) => {
		await expect(target).toBeEnabled();
		const MOST_TABS = 60;
		for (let i = 0; i < MOST_TABS; i += 1) {
			if (await target.evaluate((element) => element === document.activeElement)) {
				await page.keyboard.press('Enter');
				return;
			}
			await page.keyboard.press('Tab');
		}
		throw new Error(`byKeys: no Tab reaches ${String(target)}`);
	};
}

async function open(page: Page, lang = 'en'): Promise<void> {
	// rounds of chance, but the same ones at every run
	await page.addInitScript(() => {
		let next = 100;
		const real = crypto.getRandomValues.bind(crypto);
		crypto.getRandomValues = <T extends ArrayBufferView | null>(into: T): T =>
			into instanceof Uint16Array ? (into.fill((next += 37)) as unknown as T) : real(into as never);
	});
	await page.goto(`/quiz?lang=${lang}`);
	await ready(page);
}

const lastSetUp = new WeakMap<Page, { band: string; length: number; teams: number }>();
/** Three taps. */
async function setUp(page: Page, hand: Hand, band: string, length: number, teams: number): Promise<void> {
	lastSetUp.set(page, { band, length, teams });
	await hand(page.locator(`[data-band="${band}"]`));
	await hand(page.locator(`[data-length="${length}"]`));
	await hand(page.locator(`[data-teams="${teams}"]`));
	await asking(page).waitFor();
}

/** Types a round's code on the keys of the screen. */
async function byCode(page: Page, code: string, teams: number): Promise<void> {
	await page.locator('.again button[aria-expanded]').tap();
	for (const digit of code)
		await page.locator('.keys').getByRole('button', { name: digit, exact: true }).tap();
	await page.locator(`[data-teams="${teams}"]`).tap();
	await asking(page).waitFor();
}

interface Told {
	question: string;
	kind: string;
	ask: string;
	right: string;
	because: string;
	/** what stood beside the wrong answers that were given */
	wrong: string[];
}

/** Answers the question on the screen by every team that is asked, each the next option, and reads what is told. */
async function answer(page: Page, hand: Hand, teams: number, start = 0): Promise<Told> {
	const kind = String(await asking(page).getAttribute('data-kind'));
	const question = String(await asking(page).getAttribute('data-question'));
	const ask = await page.locator('.asking h2').innerText();
	// answers are closed while the class thinks
	await phase(page, 'answer').waitFor();
	if (kind === 'order') {
		const buttons = page.locator('.ordering button');
		for (let i = 0; i < (await buttons.count()); i += 1) await hand(buttons.nth(i));
	} else {
		const options = page.locator('[data-option]');
		const count = await options.count();
		for (let team = 0; team < teams && !(await page.locator('[data-lock]').isEnabled()); team += 1)
			await hand(options.nth((start + team) % count));
	}
	await hand(page.locator('[data-lock]'));
	await page.locator('[data-told]').waitFor();
	const line = page.locator('[data-told] li');
	const rights = page.locator('[data-told] li[data-verdict="right"]');
	const spoken = async (of: Locator) =>
		(await of.locator('[data-said]').innerText()).trim().replace(/\s+/g, ' ');
	const told = {
		question,
		kind,
		ask,
		right: (await rights.count()) > 0 ? await spoken(rights.first()) : '',
		because: await page.locator('[data-told] > p').innerText(),
		wrong: [] as string[],
	};
	for (let i = 0; i < (await line.count()); i += 1)
		if ((await line.nth(i).getAttribute('data-verdict')) === 'wrong')
			told.wrong.push(await spoken(line.nth(i)));
	return told;
}

async function axe(page: Page, where: string): Promise<void> {
	const { violations } = await new AxeBuilder({ page })
		.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
		.analyze();
	expect(violations.map(({ id, nodes }) => `${where} ${id}: ${nodes[0]?.html}`)).toEqual([]);
}

/** Skips until a question of that kind stands there. */
async function find(page: Page, kind: string): Promise<void> {
	const { band, length, teams } = lastSetUp.get(page)!;
	for (let round = 0; round < 5; round += 1) {
		for (let i = 0; i < length; i += 1) {
			const before = await asking(page).getAttribute('data-question');
			if ((await asking(page).getAttribute('data-kind')) === kind) return;
			await page.locator('[data-skip]').tap();
			await expect(page.locator(`.asking:not([data-question="${before}"]), [data-summary]`)).toBeVisible();
			if (await page.locator('[data-summary]').isVisible()) break;
		}
		// that kind did not come up in this round: another one
		await page.locator('[data-again]').tap();
		await setUp(page, byTouch, band, length, teams);
	}
	throw new Error(`find: no ${kind} question in five rounds`);
}

test('a teacher and four teams: ten questions by touch, each told with its reasons; the sheet says the same', async ({
	page,
}) => {
	await open(page);
	await setUp(page, byTouch, '7-11', 10, 4);
	const told: Told[] = [];
	for (let i = 0; i < 10; i += 1) {
		await expect(page.locator('.asking .count')).toHaveText(`Question ${i + 1} of 10`);
		await expect(page.locator('[data-option]').first()).toBeDisabled();
		told.push(await answer(page, byTouch, 4, i));
		const over = await page.evaluate(() => [
			document.documentElement.scrollWidth - innerWidth,
			document.documentElement.scrollHeight - innerHeight,
		]);
		expect(Math.max(...over), `runs over the edge: ${told[i].question}`).toBeLessThanOrEqual(1);
		// the teeth are still there, and large, while the answer is told
		for (const view of await page.locator('.asking [role="application"]').all())
			expect((await view.boundingBox())!.height).toBeGreaterThan(300);
		await page.locator('[data-next]').tap();
	}
	expect(new Set(told.map(({ question }) => question)).size).toBe(10);
	for (const { because, wrong, question } of told) {
		expect(because.length, question).toBeGreaterThan(10);
		expect(new Set(wrong).size, question).toBe(wrong.length);
		for (const reason of wrong)
			expect(reason.split(/[:.]/)[1]?.length ?? 0, `${question}: ${reason}`).toBeGreaterThan(3);
	}
	await page.locator('[data-summary]').waitFor();
	const code = (await page.locator('.code strong').innerText()).replace(/\D/g, '');
	expect(readRoundCode(code)).toMatchObject({ band: '7-11', length: 10 });

	// the sheet of the same code: the same questions in the same order, and the answers that the screen told
	await page.locator('.summary a').tap();
	await page.locator('.page[data-ready]').waitFor();
	const sheet = page.locator('.sheet section').first().locator('[data-question]');
	const answers = page.locator('.teacher').first().locator('[data-question]');
	expect(await sheet.evaluateAll((all) => all.map((one) => one.getAttribute('data-question')))).toEqual(
		told.map(({ question }) => question),
	);
	for (const [i, { ask, because, right, kind, wrong }] of told.entries()) {
		// paper has no rings to measure between
		if (kind !== 'caliper')
			expect((await sheet.nth(i).locator('h3').innerText()).replace(/^\d+\s*/, '')).toBe(ask);
		const words = await answers.nth(i).innerText();
		expect(words).toContain(because);
		// places on a tooth have no letters on paper, and a hand's order has many wrong ways
		if (kind === 'touch' || kind === 'order') continue;
		for (const reason of [...wrong, ...(right.includes(':') ? [right] : [])])
			expect(words.replace(/\s+/g, ' ')).toContain(reason.replace(/\s+/g, ' '));
		const name = right.split(/:\s/)[0];
		if (name && kind !== 'caliper')
			expect(await answers.nth(i).locator('.answer').innerText()).toContain(name);
	}
});

test('a whole round without a mouse: four teams, ten questions, by keys alone', async ({ page }) => {
	await open(page);
	const hand = byKeys(page);
	await setUp(page, hand, '5-7', 10, 4);
	for (let i = 0; i < 10; i += 1) {
		// the new question has the focus, so that a reader says it and keys go on from there
		await expect(page.locator('.asking h2')).toBeFocused();
		await answer(page, hand, 4, i);
		await expect(page.locator('[data-next]')).toBeFocused();
		await page.keyboard.press('Enter');
	}
	await expect(page.locator('[data-summary] h2')).toBeFocused();
	await expect(page.locator('.topics li').first()).toBeVisible();
	await hand(page.locator('[data-again]'));
	await expect(page.locator('.setup')).toBeVisible();
});

for (const lang of ['fr', 'es'])
	test(`a short round in ${lang}, by touch, then the set-up by keys; axe finds nothing on the way`, async ({
		page,
	}) => {
		await open(page, lang);
		await axe(page, `${lang} set-up`);
		await setUp(page, byTouch, '11-14', 5, 3);
		for (let i = 0; i < 5; i += 1) {
			const { ask, because, wrong } = await answer(page, byTouch, 3, i);
			for (const said of [ask, because, ...wrong]) expect(said).not.toMatch(/quiz_|undefined|NaN|[{}]/);
			if (i === 0) await axe(page, `${lang} told`);
			await page.locator('[data-next]').tap();
		}
		await page.locator('[data-summary]').waitFor();
		const hand = byKeys(page);
		await hand(page.locator('[data-again]'));
		await setUp(page, hand, '5-7', 5, 2);
		await expect(page.locator('.asking .count')).toContainText('1');
	});

test('axe finds nothing at set-up, typing a code, asking, told, summary, sheet and desk', async ({
	page,
}) => {
	await open(page);
	await axe(page, 'set-up');
	await page.locator('.again button[aria-expanded]').tap();
	await axe(page, 'code');
	await setUp(page, byTouch, '7-11', 5, 6);
	await axe(page, 'thinking');
	const seen = new Set<string>();
	for (let i = 0; i < 5; i += 1) {
		await phase(page, 'answer').waitFor();
		await page.locator('[data-hint]').tap();
		const kind = String(await asking(page).getAttribute('data-kind'));
		if (!seen.has(kind)) await axe(page, `asking ${kind}`);
		await answer(page, byTouch, 6, i);
		if (!seen.has(kind)) await axe(page, `told ${kind}`);
		seen.add(kind);
		await page.locator('[data-next]').tap();
	}
	await page.locator('[data-summary]').waitFor();
	await axe(page, 'summary');
	await page.locator('.summary a').tap();
	await page.locator('.page[data-ready]').waitFor();
	await axe(page, 'sheet');
	await asStaff(page);
	await page.goto('/desk/quiz');
	await ready(page);
	await axe(page, 'desk');
});

/** Waits until the tooth has come to rest. */
async function still(page: Page): Promise<void> {
	await expect.poll(() => page.evaluate(() => window.toothTable?.stats().moving)).toBe(false);
}

/** Turns the tooth by its button until one of these pins looks at the viewer; gives its letter. */
async function turnTo(page: Page, letters: readonly string[]): Promise<string> {
	for (let i = 0; i < 24; i += 1) {
		await still(page);
		const found = (await page.locator('.pin.choice').allInnerTexts()).find((one) => letters.includes(one));
		if (found) return found;
		await page.locator('.turn button').first().tap();
	}
	throw new Error(`turnTo: none of ${letters.join()} comes into sight`);
}

/** Middle of the first pin of a kind on the tooth, in px of the page. */
async function pinAt(page: Page, kind: string, label?: string): Promise<{ x: number; y: number }> {
	const pins = page.locator(`.pin.${kind}`);
	const pin = label === undefined ? pins.first() : pins.filter({ hasText: label });
	const box = (await pin.boundingBox())!;
	return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

test('"touch the tip" is answered on the 3D tooth itself by a finger, and a wrong touch is told what it met', async ({
	page,
}) => {
	await open(page);
	await setUp(page, byTouch, '5-7', 15, 1);
	await find(page, 'touch');
	const target = /touch-(\w+)-/.exec(String(await asking(page).getAttribute('data-question')))![1];
	await phase(page, 'answer').waitFor();
	const view = page.locator('.asking [role="application"]');
	await expect(view).toHaveAttribute('data-drawn', 'true');
	// the pins are the other way to answer: this time a finger goes where the wrong ones stand, and then to the part
	const options = page.locator('[data-option]');
	const ids = await options.evaluateAll((all) => all.map((one) => one.getAttribute('data-option')));
	const letter = 'ABC'[ids.indexOf('right')];
	const wrongLetter = await turnTo(
		page,
		['A', 'B', 'C'].filter((one) => one !== letter),
	);
	const wrong = await pinAt(page, 'choice', wrongLetter);
	await page.touchscreen.tap(wrong.x, wrong.y);
	await expect(page.locator('.pin.pick')).toHaveCount(1);
	await page.locator('[data-lock]').tap();
	await page.locator('[data-told]').waitFor();
	await expect(page.locator('[data-told] li[data-verdict="wrong"]')).toContainText(`Look for the ${target}`);
	// the tooth turns to the part that was meant, with a ring round it
	await expect(page.locator('.pin.proof')).toHaveCount(1);
	await page.locator('[data-next]').tap();

	await page.locator('[data-end-round]').tap();
	await page.locator('[data-end-now]').tap();
	await page.locator('[data-again]').tap();
	await setUp(page, byTouch, '5-7', 15, 1);
	await find(page, 'touch');
	await phase(page, 'answer').waitFor();
	await expect(view).toHaveAttribute('data-drawn', 'true');
	const again = await options.evaluateAll((all) => all.map((one) => one.getAttribute('data-option')));
	const mark = 'ABC'[again.indexOf('right')];
	await turnTo(page, [mark]);
	const right = await pinAt(page, 'choice', mark);
	await page.touchscreen.tap(right.x, right.y);
	await page.locator('[data-lock]').tap();
	await expect(page.locator('[data-told] li[data-verdict="right"]')).toContainText('Yes, that is');
});

test('the caliper question is answered with the caliper, put on the rings by hand and by keys', async ({
	page,
}) => {
	await open(page);
	await setUp(page, byTouch, '11-14', 15, 1);
	await find(page, 'caliper');
	await phase(page, 'answer').waitFor();
	const view = page.locator('.asking [role="application"]');
	await expect(view).toHaveAttribute('data-drawn', 'true');
	await expect(page.locator('.pin.aim')).toHaveCount(2);
	const reading = async () => Number(/([\d.]+)/.exec(await page.locator('[data-take]').innerText())![1]);
	const before = await reading();
	// a finger carries each end to its ring
	const client = await page.context().newCDPSession(page);
	for (const [end, ring] of [
		['a', 0],
		['b', 1],
	] as const) {
		const from = (await page.locator(`[data-end="${end}"]`).boundingBox())!;
		const to = (await page.locator('.pin.aim').nth(ring).boundingBox())!;
		const start = { x: from.x + from.width / 2, y: from.y + from.height / 2 };
		const goal = { x: to.x + to.width / 2, y: to.y + to.height / 2 };
		await client.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ ...start, id: 1 }] });
		for (let i = 1; i <= 10; i += 1)
			await client.send('Input.dispatchTouchEvent', {
				type: 'touchMove',
				touchPoints: [
					{ x: start.x + ((goal.x - start.x) * i) / 10, y: start.y + ((goal.y - start.y) * i) / 10, id: 1 },
				],
			});
		await client.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
	}
	await client.detach();
	await expect.poll(reading).not.toBe(before);
	const taken = await reading();
	// the browser may take a tap right after a drag for a part of it
	await expect(async () => {
		await page.locator('[data-take]').tap();
		await expect(page.locator('[data-lock]')).toBeEnabled({ timeout: 2000 });
	}).toPass({ timeout: 20_000 });
	await page.locator('[data-lock]').tap();
	await page.locator('[data-told]').waitFor();
	const right = page.locator('[data-told] li[data-verdict="right"]');
	await expect(right).toContainText('The crown measures');
	const measured = Number(/([\d.]+) mm/.exec(await right.innerText())![1]);
	// 11 to 14 years: within 8 %
	expect(Math.abs(taken / measured - 1)).toBeLessThan(0.08);
	// before anybody measured, the caliper lay far from the answer
	expect(Math.abs(before / measured - 1)).toBeGreaterThan(0.25);
});

test('order: tapped one after the other, on the teeth or their buttons; taken back; told where it went wrong', async ({
	page,
}) => {
	await open(page);
	await setUp(page, byTouch, '7-11', 15, 1);
	await find(page, 'order');
	await phase(page, 'answer').waitFor();
	const buttons = page.locator('.ordering button');
	await buttons.nth(1).tap();
	await expect(buttons.nth(1)).toContainText('Place 1');
	await buttons.nth(1).tap();
	await expect(buttons.nth(1)).toHaveAttribute('aria-pressed', 'false');
	await expect(page.locator('[data-lock]')).toBeDisabled();
	// a tap on the tooth itself counts as well
	const view = page.locator('.asking [role="application"]').first();
	await expect(view).toHaveAttribute('data-drawn', 'true');
	await still(page);
	const box = (await view.boundingBox())!;
	// a bent tooth may leave the very middle free
	for (const [dx, dy] of [0, 0.06, -0.06, 0.12].flatMap((x) => [0, 0.1, 0.2].map((y) => [x, y]))) {
		await page.touchscreen.tap(box.x + box.width * (0.5 + dx), box.y + box.height * (0.5 + dy));
		if ((await buttons.nth(0).getAttribute('aria-pressed')) === 'true') break;
	}
	await expect(buttons.nth(0)).toContainText('Place 1');
	await buttons.nth(1).tap();
	await buttons.nth(2).tap();
	await page.locator('[data-lock]').tap();
	await page.locator('[data-told]').waitFor();
	const first = await page.locator('[data-told] li').first().innerText();
	expect(first).toMatch(/[ABC] – [ABC] – [ABC]|✓/);
});

test('a reload, a change of language and an edit of the exhibit leave the round where it was', async ({
	page,
}) => {
	await open(page);
	await byCode(page, roundCode({ band: '7-11', length: 5, seed: 31 }), 2);
	await answer(page, byTouch, 2);
	await page.locator('[data-next]').tap();
	await phase(page, 'answer').waitFor();
	const question = String(await asking(page).getAttribute('data-question'));
	const english = await page.locator('.asking h2').innerText();
	await page.reload();
	await ready(page);
	await expect(asking(page)).toHaveAttribute('data-question', question);
	await expect(page.locator('.asking .count')).toHaveText('Question 2 of 5');
	await page.locator('a[hreflang="fr"]').tap();
	await expect(page.locator('html')).toHaveAttribute('lang', 'fr');
	await expect(asking(page)).toHaveAttribute('data-question', question);
	await expect(page.locator('.asking h2')).not.toHaveText(english);
	await page.locator('[data-end-round]').tap();
	await page.locator('[data-go-on]').tap();
	await expect(asking(page)).toHaveAttribute('data-question', question);
	// a curator mends a word in the middle of it
	const words = path.join(CONTENT, 'ui/fr.yaml');
	const before = readFileSync(words, 'utf8');
	try {
		writeFileSync(words, before.replace(/^quiz_hint: .*$/m, 'quiz_hint: Un coup de pouce'));
		await expect(page.locator('[data-hint]')).toHaveText('Un coup de pouce');
		await expect(asking(page)).toHaveAttribute('data-question', question);
	} finally {
		writeFileSync(words, before);
	}
	await expect(page.locator('[data-hint]')).toHaveText('Indice');
	// and switches kinds of question off, which gives new rounds other questions: this one keeps its own, over a reload too
	const settings = path.join(CONTENT, 'quiz/settings.yaml');
	const kinds = readFileSync(settings, 'utf8');
	try {
		writeFileSync(settings, kinds.replace('off: []', 'off: [choose, touch, match]'));
		await page.waitForTimeout(1500);
		await expect(asking(page)).toHaveAttribute('data-question', question);
		await page.reload();
		await ready(page);
		await expect(asking(page)).toHaveAttribute('data-question', question);
	} finally {
		writeFileSync(settings, kinds);
	}
});

test('with reduced motion nothing moves by itself, and the round goes on', async ({ page }) => {
	await page.emulateMedia({ reducedMotion: 'reduce' });
	await open(page);
	await setUp(page, byTouch, '7-11', 5, 2);
	await expect(page.locator('.think span')).toHaveCSS('animation-name', 'none');
	await answer(page, byTouch, 2);
	const moving = await page.evaluate(
		() => document.getAnimations().filter(({ playState }) => playState === 'running').length,
	);
	expect(moving).toBe(0);
	await page.locator('[data-next]').tap();
	await expect(page.locator('.asking .count')).toHaveText('Question 2 of 5');
});

test('a reader hears the question, the teeth without their titles, the answers, whose turn it is, and what is told', async ({
	page,
}) => {
	await open(page);
	await setUp(page, byTouch, '7-11', 15, 2);
	await find(page, 'choose');
	await phase(page, 'answer').waitFor();
	await expect(page.locator('.asking')).toMatchAriaSnapshot(`
    - paragraph: /Question \\d+ of 15/
    - heading /Which/ [level=2]
    - application /Tooth A\\./
    - application /Tooth B\\./
    - application /Tooth C\\./
    - group "Turn all teeth":
      - button "Turn left"
    - button "Tooth A"
    - button "Tooth B"
    - button "Tooth C"
    - group "Teams":
      - button /Amber circle/ [pressed]
      - button /Blue triangle/
    - status: /Amber circle/
    - button "Hint"
    - button "Lock in" [disabled]
  `);
	const titles = await page
		.locator('.asking [role="application"]')
		.evaluateAll((all) => all.map((one) => one.getAttribute('aria-label') ?? ''));
	for (const title of titles) expect(title).toMatch(/^Tooth [ABC]\. /);
	await answer(page, byTouch, 2);
	await expect(page.locator('.asking')).toMatchAriaSnapshot(`
    - status:
      - list:
        - listitem: /Right/
      - paragraph
    - button "Next question"
  `);
});

/** How tall the prepared mesh of a specimen is, mm: from the GLB that the screen draws, not from the drawing. */
async function meshHeights(page: Page): Promise<Map<string, number>> {
	const snapshot = JSON.parse(readFileSync(path.join(DATA, 'snapshot.json'), 'utf8')) as {
		exhibit: { specimens: { id: string; prepared: { hash: string } }[] };
	};
	const heights = new Map<string, number>();
	for (const { id, prepared } of snapshot.exhibit.specimens) {
		const glb = await (await page.request.get(`/shapes/${prepared.hash}.glb`)).body();
		// glTF 2.0, 4.4: a header of 12 bytes, then a chunk of JSON behind its length and type
		const json = JSON.parse(glb.subarray(20, 20 + glb.readUInt32LE(12)).toString()) as {
			meshes: { primitives: { attributes: { POSITION: number } }[] }[];
			accessors: { min: number[]; max: number[] }[];
		};
		const { min, max } = json.accessors[json.meshes[0].primitives[0].attributes.POSITION];
		heights.set(id, max[1] - min[1]);
	}
	return heights;
}

for (const { name, format, width_mm, height_mm } of [
	{ name: 'A4', format: 'A4', width_mm: 210, height_mm: 297 },
	{ name: 'Letter', format: 'Letter', width_mm: 215.9, height_mm: 279.4 },
] as const)
	test(`the sheet on ${name}: scale bars right within 1 %, measured on the page laid out for print and in the PDF`, async ({
		page,
	}) => {
		// as wide as what the margins of 14 mm leave of the paper
		const width = Math.round(((width_mm - 28) * 96) / 25.4);
		await page.setViewportSize({ width, height: 1000 });
		await page.emulateMedia({ media: 'print' });
		await page.goto(`/quiz/sheet?code=${roundCode({ band: '11-14', length: 10, seed: 2026 })}`);
		await page.locator('.page[data-ready]').waitFor();
		const drawn = await page.locator('.sheet figure').evaluateAll((all) =>
			all.map((figure) => {
				const svg = figure.querySelector('svg')!;
				const bar = svg.querySelector<SVGGraphicsElement>('[data-part="scale"]')!;
				const side = svg.querySelector<SVGGraphicsElement>('[data-part="side"]')!;
				const scale = side.getCTM()!.d;
				const cut = svg.getBoundingClientRect().right - figure.getBoundingClientRect().right;
				return {
					id: figure.dataset.tooth!,
					bar_px: bar.getBBox().width,
					bar_mm: Number(bar.dataset.mm),
					tooth_px: side.getBBox().height * scale,
					cut_px: cut,
				};
			}),
		);
		expect(drawn.length).toBeGreaterThan(8);
		const heights = await meshHeights(page);
		for (const { id, bar_px, bar_mm, tooth_px, cut_px } of drawn) {
			// the tooth beside its bar: as many bars tall as the mesh is
			const height_mm = (tooth_px / bar_px) * bar_mm;
			expect(
				Math.abs(height_mm / heights.get(id)! - 1),
				`${id} ${height_mm} ${heights.get(id)}`,
			).toBeLessThan(0.01);
			expect(cut_px).toBeLessThanOrEqual(1);
		}

		const pdf = await page.pdf({ format, preferCSSPageSize: false });
		const pages = pdfPages(pdf);
		expect(pages.length).toBeGreaterThanOrEqual(4);
		for (const { width_pt, height_pt } of pages) {
			expect(Math.abs((width_pt / 72) * 25.4 - width_mm)).toBeLessThan(0.6);
			expect(Math.abs((height_pt / 72) * 25.4 - height_mm)).toBeLessThan(0.6);
		}
		// on paper each bar is as long as on the page, where 96 px are an inch (CSS Values 4, 6.2): nothing was shrunk to fit
		const bars = pdfBars(pdf).sort((a, b) => a - b);
		const wanted = drawn.map(({ bar_px }) => (bar_px * 25.4) / 96).sort((a, b) => a - b);
		expect(bars).toHaveLength(wanted.length);
		for (const [i, bar] of bars.entries()) expect(Math.abs(bar / wanted[i] - 1)).toBeLessThan(0.01);
	});

test('a server that is killed in the middle of a round has lost none of the counts that it confirmed', async ({
	baseURL,
}) => {
	const port = Number(new URL(baseURL!).port) + 1;
	const data = path.join(DATA, '../killed');
	rmSync(data, { recursive: true, force: true });
	cpSync(DATA, data, { recursive: true, filter: (file) => !/counts\.db/.test(file) });
	const origin = `http://localhost:${port}`;
	const start = async (): Promise<ChildProcess> => {
		const child = spawn(process.execPath, ['src/scripts/start.mjs'], {
			cwd: path.resolve(CONTENT, '../../..'),
			env: { ...process.env, PORT: String(port), HOST: '127.0.0.1', CONTENT_DIR: CONTENT, DATA_DIR: data },
			stdio: 'ignore',
		});
		await expect
			.poll(
				() =>
					fetch(`${origin}/healthz`).then(
						({ ok }) => ok,
						() => false,
					),
				{ timeout: 90_000 },
			)
			.toBe(true);
		return child;
	};
	const kill = (child: ChildProcess) =>
		new Promise((resolve) => {
			child.once('exit', resolve);
			child.kill('SIGKILL');
		});
	let confirmed = 0;
	let server = await start();
	try {
		for (const most of [12, 30]) {
			const sending = (async () => {
				for (;;) {
					const answer = {
						question: 'choose-size-most-a',
						option: 'b',
						right: true,
						hinted: false,
						band: '7-11',
					};
					const body = { batch: crypto.randomUUID(), answers: [answer], takers: [], rounds: [] };
					const sent = await fetch(`${origin}/quiz/counts`, {
						method: 'POST',
						body: JSON.stringify(body),
						headers: { 'content-type': 'application/json', origin },
					}).catch(() => null);
					if (!sent) return;
					expect(sent.status).toBe(204);
					confirmed += 1;
				}
			})();
			await expect.poll(() => confirmed, { intervals: [5] }).toBeGreaterThanOrEqual(most);
			await kill(server);
			await sending;
			server = await start();
			const cookie = await staffCookie(origin);
			const csv = await (await fetch(`${origin}/desk/quiz.csv`, { headers: { cookie } })).text();
			const [, line] = csv.split('\r\n');
			const counted = Number(line.split(',')[3]);
			expect(line).toMatch(/^choose-size-most-a,b,yes,/);
			// one more may have reached the disk without its answer getting through, at each of the kills
			expect(counted).toBeGreaterThanOrEqual(confirmed);
			expect(counted).toBeLessThanOrEqual(confirmed + (most === 12 ? 1 : 2));
		}
	} finally {
		await kill(server);
		rmSync(data, { recursive: true, force: true });
	}
});

test('after a round, the database and the page’s stores hold nothing about anybody', async ({ page }) => {
	await open(page);
	await setUp(page, byTouch, '7-11', 5, 3);
	const sent: string[] = [];
	page.on('request', (request) => {
		if (request.url().endsWith('/quiz/counts')) sent.push(request.postData() ?? '');
	});
	for (let i = 0; i < 5; i += 1) {
		await answer(page, byTouch, 3, i);
		const kept = await page.evaluate(() => ({ ...sessionStorage, ...localStorage }));
		// the round, and what the visitor set; the only moment in it is when the phase began, and it goes with the round
		for (const text of Object.values(kept) as string[])
			expect(text).not.toMatch(/Mozilla|Chrom|127\.0\.0\.1|[0-9a-f]{8}-[0-9a-f]{4}-/i);
		await page.locator('[data-next]').tap();
	}
	await page.locator('[data-summary]').waitFor();
	expect(
		await page.evaluate(() => Object.keys(sessionStorage).filter((key) => key.includes('round'))),
	).toEqual([]);
	expect(await page.evaluate(() => document.cookie)).toBe('');
	await expect.poll(() => sent.length).toBe(6);
	await expect.poll(() => readFileSync(path.join(DATA, 'counts.db')).length).toBeGreaterThan(0);
	// as bytes: no user agent, no address, nothing of the page
	const bytes = ['counts.db', 'counts.db-wal']
		.filter((name) => existsSync(path.join(DATA, name)))
		.map((name) => readFileSync(path.join(DATA, name)).toString('latin1'))
		.join('\n');
	expect(bytes).toContain('quiz-answer');
	expect(bytes).not.toMatch(/Mozilla|Chrome|AppleWebKit|127\.0\.0\.1|localhost|sessionStorage/);
	// as rows: a day, ids of the exhibit, yes or no, small numbers; a sending has a random name and a day
	const db = new Database(path.join(DATA, 'counts.db'), { readonly: true });
	const tables = db.prepare("select name from sqlite_master where type = 'table' order by name").all();
	expect((tables as { name: string }[]).map(({ name }) => name)).toEqual(['batch', 'tally']);
	const DAY = /^\d{4}-\d{2}-\d{2}$/;
	for (const row of db.prepare('select * from batch').all() as Record<string, unknown>[]) {
		expect(Object.keys(row).sort()).toEqual(['day', 'name']);
		expect(row.day).toMatch(DAY);
		// version 4 of RFC 9562, 5.4: random, with no clock and no machine in it
		expect(row.name).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
	}
	const tallies = db.prepare("select * from tally where kind like 'quiz-%'").all() as Record<
		string,
		string | number
	>[];
	expect(tallies.length).toBeGreaterThan(5);
	for (const row of tallies) {
		expect(Object.keys(row).sort()).toEqual(['count', 'day', 'facts', 'kind']);
		expect(row.day).toMatch(DAY);
		expect(row.kind).toMatch(/^quiz-(answer|taker|round)$/);
		for (const [key, value] of JSON.parse(String(row.facts)) as [string, unknown][]) {
			expect(['question', 'option', 'right', 'hinted', 'band', 'total', 'of', 'round']).toContain(key);
			if (key === 'right' || key === 'hinted') expect(typeof value).toBe('boolean');
			else if (key === 'total' || key === 'of') expect([...Array(16).keys()]).toContain(value);
			else if (key === 'round') expect(value).toMatch(/^\d{6}$/);
			else if (key === 'band') expect(['5-7', '7-11', '11-14']).toContain(value);
			else expect(value).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
		}
	}
	db.close();
});
