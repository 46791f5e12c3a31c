import { AxeBuilder } from './axe';
import type { Page } from '@playwright/test';
import { changed, expect, pixels, ready, test, touchDrag } from './helpers';

const STEPS = ['life', 'jaw', 'diary', 'count', 'wear', 'shed'] as const;
const LANGUAGES = ['en', 'fr', 'es'] as const;

async function open(page: Page, step: (typeof STEPS)[number], lang = 'en'): Promise<void> {
	await page.goto(`/replacement?step=${step}&lang=${lang}`);
	await ready(page);
}

/** Waits until the shape stands in 3D and the stage rests. */
async function stands(page: Page): Promise<void> {
	await expect(page.getByRole('application')).toHaveAttribute('data-drawn', 'true');
	await expect.poll(() => page.evaluate(() => window.toothTable?.stats().moving)).toBe(false);
}

const timeSlider = (page: Page, name: RegExp) => page.getByRole('slider', { name });

test('the start screen leads here, and six screens lie side by side', async ({ page }) => {
	await page.goto('/');
	await ready(page);
	await page.locator('[data-room="replacement"]').tap();
	await ready(page);
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('The life of a tooth');
	await expect(page.getByRole('tab')).toHaveCount(STEPS.length);
	for (let i = 0; i < STEPS.length; i += 1) {
		const tab = page.getByRole('tab').nth(i);
		await tab.tap();
		await expect(tab).toHaveAttribute('aria-selected', 'true');
		const name = (await tab.innerText()).replace(/^\s*\d\s*/, '').trim();
		await expect(page.getByRole('tabpanel')).toHaveAccessibleName(new RegExp(name.replace('?', '\\?')));
		await expect(page.getByRole('tabpanel').getByRole('heading', { level: 2 }).first()).toBeVisible();
	}
	await expect(page).toHaveURL(/step=shed/);
});

test('one tooth: every stage in its order by touch, told in a sentence, and seen', async ({ page }) => {
	await open(page, 'life');
	await stands(page);
	const slider = timeSlider(page, /from germ to fall/);
	await slider.press('Home');
	const status = page.locator('[data-stage]');
	const on = page.getByRole('button', { name: 'One step on' });
	const order = ['germ', 'crown', 'pit', 'loose', 'erupting', 'in-use', 'shed'];
	const sentences = new Set<string>();
	let last = null;
	for (const stage of order) {
		await expect(status).toHaveAttribute('data-stage', stage);
		const sentence = await status.locator('p').innerText();
		expect(sentence).toMatch(/^[^{}]{12,}$/);
		sentences.add(sentence);
		await stands(page);
		const now = await pixels(page.getByRole('application'));
		if (last) expect(changed(last, now), stage).toBeGreaterThan(0.002);
		last = now;
		await on.tap();
	}
	expect(sentences.size).toBe(order.length);
	await page.getByRole('button', { name: 'One step back' }).tap();
	await expect(status).toHaveAttribute('data-stage', /shed|in-use/);
});

test('one tooth: three arrangements, cut open or whole, turned by a finger', async ({ page }) => {
	await open(page, 'life');
	await stands(page);
	const view = page.getByRole('application');
	const kinds = page.locator('.kinds button');
	await expect(kinds).toHaveCount(3);
	const first = await pixels(view);
	await kinds.nth(2).tap();
	await stands(page);
	const lizard = await pixels(view);
	expect(changed(first, lizard)).toBeGreaterThan(0.02);
	await page.getByRole('button', { name: 'Whole' }).tap();
	await stands(page);
	const whole = await pixels(view);
	expect(changed(lizard, whole)).toBeGreaterThan(0.02);
	await touchDrag(page, view, 160, 0);
	await stands(page);
	expect(changed(whole, await pixels(view))).toBeGreaterThan(0.01);
});

test('play runs only when asked, and pauses', async ({ page }) => {
	await open(page, 'jaw');
	const slider = timeSlider(page, /^Time$/);
	const before = await slider.inputValue();
	await page.waitForTimeout(600);
	expect(await slider.inputValue()).toBe(before);
	await page.getByRole('button', { name: 'Play' }).tap();
	await expect.poll(() => slider.inputValue()).not.toBe(before);
	await page.getByRole('button', { name: 'Pause' }).tap();
	const stopped = await slider.inputValue();
	await page.waitForTimeout(400);
	expect(await slider.inputValue()).toBe(stopped);
});

// signs of d_2: + below z = 2, 0 at 2, - above (DeMar 1972); neighbours at z = 2.5 run the other way
test('the jaw: the wave turns with the spacing, and with the teeth that are followed', async ({ page }) => {
	await open(page, 'jaw');
	const spacing = page.getByRole('slider', { name: /Spacing of the series/ });
	const direction = page.locator('[data-direction]');
	const set = async (z: number) => {
		await spacing.press('Home');
		for (let i = 0; i < Math.round((z - 1) * 10); i += 1) await spacing.press('ArrowRight');
		await expect(spacing).toHaveAttribute('aria-valuetext', String(z === 2 ? '2.0' : z));
	};
	await set(1.6);
	await expect(direction).toHaveAttribute('data-direction', 'front-to-back');
	await set(2);
	await expect(direction).toHaveAttribute('data-direction', 'together');
	await set(2.5);
	await expect(direction).toHaveAttribute('data-direction', 'back-to-front');
	await page.getByRole('button', { name: 'Every neighbour' }).tap();
	await expect(direction).toHaveAttribute('data-direction', 'front-to-back');
	await page.getByRole('button', { name: 'Two ideas' }).tap();
	await expect(page.locator('figure.row')).toHaveCount(2);
	await expect(page.locator('figure.row').nth(1)).toContainText('Our own toy model');
	const row = page.getByRole('img', { name: /A row of \d+ upper teeth/ }).first();
	const told = await row.getAttribute('aria-label');
	const seen = await pixels(row);
	await timeSlider(page, /^Time$/).press('End');
	await expect(row).not.toHaveAttribute('aria-label', String(told));
	expect(changed(seen, await pixels(row))).toBeGreaterThan(0.02);
});

test('the diary: lines counted and thickness measured give the ages and the time between teeth', async ({
	page,
}) => {
	await open(page, 'diary');
	// the practice slice was made with 24 lines and 10
	const read = async (lines: number) => {
		await page.getByRole('slider', { name: 'Ruler over the slice' }).press('Home');
		for (let i = 0; i < lines; i += 1) await page.getByRole('button', { name: 'Count one more line' }).tap();
		await page.getByRole('slider', { name: 'Ruler over the slice' }).press('End');
	};
	await read(24);
	await expect(page.locator('[data-age]')).toHaveText(/^= 2[345] days$/);
	await page.getByRole('button', { name: 'The next tooth' }).tap();
	await read(10);
	await expect(page.locator('[data-age]')).toHaveText(/^= (9|10|11) days$/);
	await expect(page.locator('[data-period]')).toHaveText(/^1[345] days$/);
	// a tap in the lens counts, a second one takes it back
	await page.getByRole('button', { name: 'Start again' }).tap();
	await page.locator('.lens').tap();
	await expect(page.getByText('count at least two lines')).toBeVisible();
	// at the edge lines are 36 % narrower (Kosch & Zanno 2020): 1 / (1 - 0.36) = 1.5625 times too old
	await page.getByRole('slider', { name: 'Where the slice is taken' }).press('End');
	await expect(page.getByRole('button', { name: /How many times too old: × 1.56/ })).toBeVisible();
});

test('the diary: a published pair of teeth gives 511 - 233 = 278 days, with its source', async ({ page }) => {
	await open(page, 'diary');
	await page.locator('button.animal').last().tap();
	const number = page.getByRole('button', { name: /From one tooth to the next: 278 days/ });
	await number.tap();
	const panel = page.getByRole('dialog');
	await expect(panel).toBeVisible();
	await expect(panel).toContainText('Chinsamy');
	await page.keyboard.press('Escape');
	await expect(panel).toBeHidden();
	// the width of a line was read about only: it says so
	await page.getByRole('button', { name: /Width of one line: 10.9 µm/ }).tap();
	await expect(page.getByRole('dialog')).toContainText('read about, not read itself');
});

test('how many: places, time and years give the count, with its spread and a heap', async ({ page }) => {
	await open(page, 'count');
	await page.locator('.animals button').first().tap();
	const answer = page.locator('.answer');
	// generations G = (1 - exp(-g L)) / (g T0), g = ln(T_L / T0) / L; 80 places, 110 days growing to 547.5 in 35 years
	const [first, last, life] = [110, 548, 35 * 365.25];
	const g = Math.log(last / first) / life;
	const expected = (80 * (1 - Math.exp(-g * life))) / (g * first);
	const count = Number(await answer.getAttribute('data-count'));
	expect(Math.abs(count - expected)).toBeLessThan(expected * 0.01);
	await expect(answer).toContainText(/between [\d,]+ and [\d,]+/);
	const heap = page.getByRole('img', { name: /A heap of/ });
	const beside = await pixels(heap);
	await page.getByRole('button', { name: /A hand/ }).tap();
	expect(changed(beside, await pixels(heap))).toBeGreaterThan(0.05);
	await page.getByRole('button', { name: 'Always the same' }).tap();
	expect(Number(await answer.getAttribute('data-count'))).toBe(Math.round((80 * life) / first));
});

test('how many: the count while one watches begins when asked and pauses', async ({ page }) => {
	await open(page, 'count');
	const watched = page.locator('.watched p').first();
	const still = await watched.innerText();
	await page.waitForTimeout(1500);
	expect(await watched.innerText()).toBe(still);
	await page.locator('[data-watch]').tap();
	await expect(watched).not.toHaveText(still);
	await page.locator('[data-watch]').tap();
	const paused = await watched.innerText();
	await page.waitForTimeout(1300);
	expect(await watched.innerText()).toBe(paused);
});

test('animals compared: each period opens to its source, what is not checked is marked', async ({ page }) => {
	await open(page, 'count');
	await page.getByRole('button', { name: 'Animals compared' }).tap();
	const rows = page.locator('tbody tr');
	expect(await rows.count()).toBeGreaterThan(5);
	const rex = rows.filter({ hasText: 'Tyrannosaurus' });
	await expect(rex.locator('sup').first()).toHaveText('?');
	await rex.getByRole('button').first().tap();
	await expect(page.getByRole('dialog')).toContainText('recalled, not checked');
	await page.keyboard.press('Escape');
	await expect(rows.filter({ hasText: 'Komodo' }).locator('sup')).toHaveCount(0);
});

test('wear: the facet grows, follows the closing angle, and ends in a stump', async ({ page }) => {
	await open(page, 'wear');
	await stands(page);
	const area = page.getByRole('button', { name: /^Facet, area/ });
	const angle = page.getByRole('button', { name: /^Facet, angle/ });
	const wear = timeSlider(page, /^Wear, from new/);
	await wear.press('Home');
	await expect(area).toContainText('–');
	for (let i = 0; i < 8; i += 1) await wear.press('ArrowRight');
	await expect(area).toContainText(/\d mm²/);
	// the facet lies along the path: its angle is the closing angle
	const closing = page.getByRole('slider', { name: 'Angle at which it shuts' });
	const degrees = await closing.inputValue();
	await expect(angle).toContainText(`${degrees}°`);
	for (let i = 0; i < 6; i += 1) await closing.press('ArrowRight');
	await expect(angle).toContainText(`${Number(degrees) + 6}°`);
	await wear.press('End');
	await expect(page.locator('.story')).toContainText('stump');
	await page.getByRole('slider', { name: 'Distance between the teeth' }).press('End');
	await expect(page.locator('.story')).toContainText(/without touching|stump|grows/);
});

test('shed or torn out: signs first, then an answer that teaches; the drawer is counted', async ({
	page,
}) => {
	await open(page, 'shed');
	await stands(page);
	const answers = page.locator('[data-verdict]');
	for (const answer of await answers.all()) await expect(answer).toBeDisabled();
	const truths = ['shed', 'torn-out', 'broken-crown'];
	const view = page.getByRole('application');
	for (const [i, truth] of truths.entries()) {
		await page.locator('.pick button').nth(i).tap();
		await stands(page);
		const before = await pixels(view);
		await page.locator('.signs button').nth(1).tap();
		await expect(page.locator('.found li')).toHaveCount(1);
		await stands(page);
		expect(changed(before, await pixels(view))).toBeGreaterThan(0.01);
		// a wrong answer first: it is told why
		const wrong = truths[(i + 1) % truths.length];
		await page.locator(`[data-verdict="${wrong}"]`).tap();
		await expect(page.locator('.feedback')).toHaveAttribute('data-right', 'false');
		expect(await page.locator('.feedback li').count()).toBeGreaterThan(1);
		await page.locator(`[data-verdict="${truth}"]`).tap();
		await expect(page.locator('.feedback')).toHaveAttribute('data-right', 'true');
	}
	await expect(page.locator('.solved')).toHaveText('3 of 3 teeth read rightly');
	const counts = await page
		.locator('[data-part]')
		.evaluateAll((rows) => rows.map((row) => Number((row as HTMLElement).dataset.count)));
	const pictures = await page.locator('[data-part] img').count();
	expect(counts.reduce((sum, count) => sum + count, 0)).toBe(pictures);
});

test('by keyboard alone: tabs by arrows, then the panel', async ({ page }) => {
	await open(page, 'life');
	await page.getByRole('tab', { selected: true }).focus();
	await page.keyboard.press('ArrowRight');
	await expect(page.getByRole('tab', { name: /The jaw/ })).toBeFocused();
	await page.keyboard.press('Tab');
	// the first stop inside the panel
	expect(await page.evaluate(() => document.activeElement?.closest('[role="tabpanel"]') !== null)).toBe(true);
	const slider = timeSlider(page, /^Time$/);
	await slider.focus();
	const told = await slider.getAttribute('aria-valuetext');
	await page.keyboard.press('PageUp');
	await expect(slider).not.toHaveAttribute('aria-valuetext', String(told));
});

test('reduced motion: steps in the place of playing', async ({ page }) => {
	await page.emulateMedia({ reducedMotion: 'reduce' });
	for (const step of ['life', 'jaw', 'wear'] as const) {
		await open(page, step);
		await expect(page.locator('[data-play]')).toHaveCount(0);
		const slider = page.locator('.time input[type="range"]').last();
		const before = await slider.inputValue();
		await page.getByRole('button', { name: 'One step on' }).tap();
		await expect.poll(() => slider.inputValue()).not.toBe(before);
	}
	await open(page, 'count');
	await page.getByRole('button', { name: 'One more day' }).tap();
	await expect(page.locator('.watched p').first()).toContainText('1 day');
});

for (const lang of LANGUAGES)
	test(`axe finds nothing and nothing runs over the edge, at three sizes (${lang})`, async ({ page }) => {
		test.slow();
		for (const step of STEPS) {
			await open(page, step, lang);
			await expect(page.locator('html')).toHaveAttribute('lang', lang);
			// colours and structure are the same in every language; words and widths are looked at in each
			if (lang === 'en') {
				const { violations } = await new AxeBuilder({ page })
					.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
					.analyze();
				expect(violations.map(({ id, nodes }) => `${step} ${id}: ${nodes[0]?.html}`)).toEqual([]);
			}
			expect(await page.locator('body').innerText()).not.toMatch(/repl_[a-z]/);
			for (const size of [
				{ width: 1920, height: 1080 },
				{ width: 1080, height: 1920 },
				{ width: 390, height: 844 },
			]) {
				await page.setViewportSize(size);
				const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
				expect(over, `${step} ${size.width}`).toBeLessThanOrEqual(0);
				const small = await page.locator('main button:visible').evaluateAll((buttons) =>
					buttons
						.map((button) => ({ box: button.getBoundingClientRect(), html: button.outerHTML.slice(0, 80) }))
						.filter(({ box }) => box.height < 43.9 || box.width < 43.9)
						.map(({ html }) => html),
				);
				expect(small, `${step} ${size.width}`).toEqual([]);
			}
			await page.setViewportSize({ width: 1920, height: 1080 });
		}
	});
