import { AxeBuilder } from './axe';
import type { Page } from '@playwright/test';
import sharp from 'sharp';
import { allowFault, asStaff, drawn, expect, ready, test } from './helpers';

// content/exhibit.yaml and content/quiz/settings.yaml, ms
const WARN_ms = 100_000;
const RESET_ms = 25_000;
const QUIZ_ms = 300_000;
/** what an untouched start screen waits, see kiosk/idle.svelte.ts */
const REST_ms = 40_000;
const STEP_ms = 8_000;

const question = (page: Page) => page.locator('dialog[data-idle]');
const loop = (page: Page) => page.locator('.attract');

/** Opens a page whose clock is ours. */
async function open(page: Page, path: string): Promise<void> {
	await page.clock.install();
	await page.goto(path);
	await ready(page);
	// the question and the loop have come in the background
	await page.clock.runFor(2_000);
	await page.waitForLoadState('networkidle').catch(() => undefined);
	await page.clock.runFor(500);
}
/** Lets time pass as it does, every timer in its turn; in parts, so that what has been fetched comes in between. */
async function pass(page: Page, ms: number): Promise<void> {
	for (let left = ms; left > 0; left -= 5_000) await page.clock.runFor(Math.min(5_000, left));
}
/** The loop's next step, without the frames in between; what it shows then has been drawn. */
async function nextStep(page: Page): Promise<void> {
	await page.clock.fastForward(STEP_ms);
	await page.clock.runFor(200);
	await expect(page.locator('html')).toHaveAttribute('data-attract', 'lit');
}
const kept = (page: Page) =>
	page.evaluate(() => Object.keys(sessionStorage).filter((key) => key.startsWith('tooth-table')));

test('idle: one touch anywhere goes on, as often as wanted, and touches nothing else', async ({ page }) => {
	await open(page, '/compare?lang=fr');
	const address = page.url();
	for (let i = 0; i < 12; i += 1) {
		await pass(page, WARN_ms + 1_000);
		await expect(question(page)).toBeVisible();
		if (i === 0) {
			await expect(question(page)).toHaveAccessibleName('Toujours là ?');
			await expect(question(page)).toHaveRole('alertdialog');
			const left = Number(await question(page).locator('[data-left]').innerText());
			expect(left).toBeGreaterThanOrEqual(20);
			const { violations } = await new AxeBuilder({ page }).include('dialog[data-idle]').analyze();
			expect(violations).toEqual([]);
		}
		// on the question, beside it, and where the way home lies below it
		const at = [
			[960, 540],
			[1900, 1070],
			[60, 60],
		][i % 3];
		await page.touchscreen.tap(at[0], at[1]);
		await page.clock.runFor(500);
		await expect(question(page)).toHaveCount(0);
	}
	expect(page.url()).toBe(address);
});

test('idle: a key goes on and acts on nothing, and the focus is where it was', async ({ page }) => {
	await open(page, '/compare');
	const home = page.locator('.home');
	await home.focus();
	for (const name of ['Enter', 'Escape', 'a']) {
		await pass(page, WARN_ms + 1_000);
		await expect(question(page)).toBeVisible();
		await page.keyboard.press(name);
		await expect(question(page)).toHaveCount(0);
		await expect(home).toBeFocused();
		expect(new URL(page.url()).pathname).toBe('/compare');
	}
});

test('idle: nobody answers, and everything goes back', async ({ page }) => {
	await page.addInitScript(() => {
		if (sessionStorage.getItem('seen') !== null) return;
		sessionStorage.setItem('seen', '');
		sessionStorage.setItem(
			'tooth-table-comfort',
			JSON.stringify({ textSize: 'largest', highContrast: true, lowReach: true, sound: false, volume: 5 }),
		);
	});
	await open(page, '/replacement?lang=es');
	const root = page.locator('html');
	await expect(root).toHaveAttribute('lang', 'es');
	await expect(root).toHaveAttribute('data-text', 'largest');
	await expect(root).toHaveAttribute('data-contrast', 'high');
	await expect(root).toHaveAttribute('data-reach', 'low');
	await pass(page, WARN_ms + 1_000);
	await expect(question(page)).toBeVisible();
	await pass(page, RESET_ms + 1_000);
	await expect(page).toHaveURL(/\/$/);
	await expect(root).toHaveAttribute('lang', 'en');
	await expect(root).toHaveAttribute('data-text', 'usual');
	await expect(root).toHaveAttribute('data-contrast', 'usual');
	await expect(root).toHaveAttribute('data-reach', 'usual');
	expect(await kept(page)).toEqual([]);
	// nobody is here, so the loop runs at once
	await page.clock.runFor(500);
	await expect(loop(page)).toBeVisible();
});

test('idle: a class thinks longer, and its round goes with it', async ({ page }) => {
	await open(page, '/quiz');
	await page.locator('[data-teams="2"]').click();
	await page.locator('[data-question]').waitFor();
	await pass(page, QUIZ_ms - 10_000);
	await expect(question(page)).toHaveCount(0);
	expect(await kept(page)).toContain('tooth-table.round');
	await pass(page, 12_000);
	await expect(question(page)).toBeVisible();
	await pass(page, RESET_ms + 1_000);
	await expect(page).toHaveURL(/\/$/);
	expect(await kept(page)).toEqual([]);
	await page.goto('/quiz');
	await ready(page);
	await expect(page.locator('[data-question]')).toHaveCount(0);
});

test('idle: a sleep of hours ends nobody’s visit', async ({ page }) => {
	await open(page, '/compare?lang=fr');
	await pass(page, 50_000);
	await page.clock.fastForward('09:00:00');
	await page.clock.runFor(1_000);
	await expect(question(page)).toHaveCount(0);
	await pass(page, 55_000);
	await expect(question(page)).toBeVisible();
	await page.clock.fastForward('09:00:00');
	await page.clock.runFor(500);
	await expect(question(page)).toBeVisible();
	await expect(page).toHaveURL(/compare/);
});

test('idle: the server is away: the settings go back at once, the start screen follows', async ({ page }) => {
	allowFault(page, /Failed to load resource|ERR_FAILED/);
	await open(page, '/compare?lang=fr');
	await page.evaluate(() => sessionStorage.setItem('tooth-table.round', '{}'));
	await page.route('**/healthz', (route) => route.abort());
	await pass(page, WARN_ms + RESET_ms + 2_000);
	await expect(page).toHaveURL(/compare/);
	await expect(question(page)).toHaveCount(0);
	expect(await kept(page)).toEqual([]);
	await page.unroute('**/healthz');
	await pass(page, 11_000);
	await expect(page).toHaveURL(/\/$/);
});

test('idle: never at the desk, and not on a device of one’s own', async ({ page }) => {
	await asStaff(page);
	for (const path of ['/desk', '/compare?lang=fr&screen=own']) {
		await open(page, path);
		await pass(page, 2 * (WARN_ms + RESET_ms));
		await expect(question(page)).toHaveCount(0);
		expect(page.url()).toContain(path.split('?')[0]);
	}
});

test('attract: two teeth and one question, in each language; a touch lays them on the table', async ({
	page,
}) => {
	await open(page, '/');
	await pass(page, REST_ms + 1_000);
	await expect(loop(page)).toBeVisible();
	// what lies behind cannot be reached
	await expect(page.locator('[data-room="compare"]')).not.toBeVisible();
	const { violations } = await new AxeBuilder({ page }).include('.attract').analyze();
	expect(violations).toEqual([]);

	const asked: [string | null, string][] = [];
	for (let step = 0; step < 6; step += 1) {
		const ask = loop(page).locator('.ask');
		asked.push([await ask.getAttribute('lang'), await ask.innerText()]);
		await nextStep(page);
	}
	expect(new Set(asked.map(([lang]) => lang))).toEqual(new Set(['en', 'fr', 'es']));
	expect(new Set(asked.map(([, words]) => words)).size).toBe(6);

	const target = new URL(
		String(await loop(page).locator('[data-attract-open]').getAttribute('href')),
		page.url(),
	);
	await page.touchscreen.tap(500, 600);
	await expect(page).toHaveURL(/compare/);
	await ready(page);
	await drawn(page);
	const lying = await page
		.locator('[data-place]')
		.evaluateAll((all) => all.map((place) => place.getAttribute('data-specimen')));
	expect(lying).toEqual(String(target.searchParams.get('teeth')).split(','));
	await expect(loop(page)).toHaveCount(0);
});

test('attract: a language or any key opens the start screen', async ({ page }) => {
	await open(page, '/');
	await pass(page, REST_ms + 1_000);
	await loop(page).locator('[data-attract-language="fr"]').tap();
	await page.clock.runFor(1_000);
	await expect(page.locator('html')).toHaveAttribute('lang', 'fr');
	await expect(loop(page)).toHaveCount(0);
	await expect(page.locator('[data-room="compare"]')).toBeVisible();

	// another language is something to lose: it is asked for before it goes
	await pass(page, WARN_ms + 1_000);
	await expect(question(page)).toBeVisible();
	await pass(page, RESET_ms + 1_000);
	await expect(page.locator('html')).toHaveAttribute('lang', 'en');
	await page.clock.runFor(500);
	await expect(loop(page)).toBeVisible();
	await page.keyboard.press('Tab');
	await expect(loop(page)).toHaveCount(0);
	await expect(page.locator('[data-room="compare"]')).toBeVisible();
});

test('attract: nothing bright stands still, and nothing is drawn while nothing turns', async ({ page }) => {
	test.setTimeout(120_000);
	// fewer pixels, drawn without a graphics card
	await page.setViewportSize({ width: 1067, height: 600 });
	await open(page, '/');
	await pass(page, REST_ms + 1_000);
	await expect(loop(page)).toBeVisible();
	await expect(page.locator('html')).toHaveAttribute('data-attract', 'lit');
	const WIDTH = 480;
	let least: Uint8Array | null = null;
	for (let step = 0; step < 5; step += 1) {
		const { data } = await sharp(await page.screenshot())
			.greyscale()
			.resize(WIDTH)
			.raw()
			.toBuffer({ resolveWithObject: true });
		least = least ? least.map((value, i) => Math.min(value, data[i])) : new Uint8Array(data);
		await nextStep(page);
	}
	// bone and amber are brighter than 160 of 255; felt is darker than 60
	const bright = least?.filter((value) => value > 150).length ?? 0;
	expect(bright / (least?.length ?? 1)).toBeLessThan(0.0005);

	const frames = () => page.evaluate(() => window.toothTable?.stats().frames ?? -1);
	// with a graphics card they turn, without one they stand otherwise at each step: it is drawn either way
	const before = await frames();
	await nextStep(page);
	expect(await frames()).toBeGreaterThan(before);

	await page.emulateMedia({ reducedMotion: 'reduce' });
	await nextStep(page);
	const still = await frames();
	await page.clock.runFor(3 * STEP_ms);
	// new teeth and new places are drawn, but nothing in between
	expect((await frames()) - still).toBeLessThan(60);
});

test('gallery: no menu, no selection, no dragging out, no zoom, no dialog by a key, no way out', async ({
	page,
}) => {
	for (const path of ['/', '/compare', '/feeding', '/replacement', '/quiz', '/quiz/sheet']) {
		await page.goto(path);
		await ready(page);
		await expect(page.locator('html')).toHaveAttribute('data-gallery', '');
		const found = await page.evaluate(() => {
			const refused = (event: Event, target: EventTarget = document.body) => !target.dispatchEvent(event);
			const cancelable = { bubbles: true, cancelable: true };
			const style = getComputedStyle(document.body);
			return {
				menu: refused(new MouseEvent('contextmenu', cancelable)),
				select: refused(new Event('selectstart', cancelable)),
				drag: refused(new DragEvent('dragstart', cancelable)),
				drop: refused(new DragEvent('drop', cancelable)),
				zoom: refused(new WheelEvent('wheel', { ...cancelable, ctrlKey: true })),
				scroll: refused(new WheelEvent('wheel', cancelable)),
				print: refused(new KeyboardEvent('keydown', { ...cancelable, key: 'p', ctrlKey: true })),
				back: refused(new KeyboardEvent('keydown', { ...cancelable, key: 'ArrowLeft', altKey: true })),
				userSelect: style.userSelect,
				touch: getComputedStyle(document.documentElement).touchAction,
				overscroll: getComputedStyle(document.documentElement).overscrollBehaviorX,
				outside: [...document.querySelectorAll<HTMLAnchorElement>('a[href], area[href], form[action]')]
					.filter((link) => new URL(link.href, location.href).origin !== location.origin)
					.map((link) => link.outerHTML),
				windows: document.querySelectorAll('[target="_blank"], [download], iframe, object, embed').length,
			};
		});
		expect(found, path).toEqual({
			menu: true,
			select: true,
			drag: true,
			drop: true,
			zoom: true,
			scroll: false,
			print: true,
			back: true,
			userSelect: 'none',
			touch: 'pan-x pan-y',
			overscroll: 'none',
			outside: [],
			windows: 0,
		});
	}
	// somebody's own device keeps its own ways
	await page.goto('/compare?screen=own');
	await ready(page);
	await expect(page.locator('html')).not.toHaveAttribute('data-gallery');
});

test('policy: strict, held by every page, and it does refuse', async ({ page }) => {
	await page.addInitScript(() => {
		const broken: string[] = [];
		(window as unknown as { broken: string[] }).broken = broken;
		document.addEventListener('securitypolicyviolation', (event) =>
			broken.push(`${event.effectiveDirective} ${event.blockedURI} ${event.sample}`),
		);
	});
	await asStaff(page);
	const broken = () => page.evaluate(() => (window as unknown as { broken: string[] }).broken);
	for (const path of [
		'/',
		'/compare',
		'/feeding',
		'/replacement',
		'/quiz',
		'/quiz/sheet',
		'/desk',
		'/desk/quiz',
		'/desk/screen',
	]) {
		const response = await page.goto(path);
		const policy = response?.headers()['content-security-policy'] ?? '';
		expect(policy, path).toContain("default-src 'none'");
		expect(policy).toContain("frame-ancestors 'none'");
		expect(policy).toContain("base-uri 'none'");
		expect(policy).toContain("form-action 'none'");
		expect(policy).not.toContain('unsafe-inline');
		expect(policy).not.toContain("'unsafe-eval'");
		expect(policy).not.toMatch(/https?:|\*/);
		expect(response?.headers()['x-content-type-options']).toBe('nosniff');
		expect(response?.headers()['referrer-policy']).toBe('no-referrer');
		await page.locator('[data-ready], main').first().waitFor();
		// from page to page too, where titles are announced
		await page.waitForTimeout(300);
		expect(await broken(), path).toEqual([]);
	}
	await page.goto('/');
	await ready(page);
	await page.locator('[data-room]').nth(1).click();
	await page.waitForURL(/\/(feeding|compare|replacement|quiz)/);
	await ready(page);
	expect(await broken()).toEqual([]);

	allowFault(page, /Content Security Policy|violates the following/);
	const crept = await page.evaluate(() => {
		const holder = document.createElement('div');
		holder.innerHTML = '<p style="position: fixed">a</p>';
		document.body.append(holder);
		const script = document.createElement('script');
		script.textContent = 'window.crept = true';
		document.body.append(script);
		const position = getComputedStyle(holder.firstElementChild as Element).position;
		return { position, script: 'crept' in window };
	});
	expect(crept).toEqual({ position: 'static', script: false });
	await expect.poll(async () => (await broken()).length).toBeGreaterThan(1);
});

test('policy: what is not a page may do nothing; what changes something is bounded', async ({ request }) => {
	const health = await request.get('/healthz');
	expect(health.headers()['content-security-policy']).toContain("default-src 'none'");
	expect(health.headers()['content-security-policy']).toContain("frame-ancestors 'none'");
	const large = await request.post('/quiz/counts', {
		data: 'x'.repeat(300_000),
		headers: { 'content-type': 'application/json' },
	});
	expect(large.status()).toBe(413);
});
