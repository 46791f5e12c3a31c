import type { Page } from '@playwright/test';
import { changed, expect, pixels, ready, test, touchDrag } from './helpers';

// A day of small hands: whatever is touched, in whatever order, with however many fingers.

const GESTURES = 5000;
/** of them by the browser's own touch input, the rest as events in the page, which is much faster */
const REAL = 120;
const BATCH = 240;
const SEED = 20261125;

interface Tally {
	gestures: number;
	seed: number;
}

/** Fingers that the browser does not know cannot be captured; the page may still ask. */
const letSyntheticPointersBeCaptured = () => {
	const real = { set: Element.prototype.setPointerCapture, has: Element.prototype.hasPointerCapture };
	Element.prototype.setPointerCapture = function (id) {
		if (id < 1000) real.set.call(this, id);
	};
	Element.prototype.hasPointerCapture = function (id) {
		return id < 1000 && real.has.call(this, id);
	};
};

/** Runs in the page: so many gestures, up to five fingers at a time. */
const storm = async ({ gestures, seed }: Tally): Promise<Tally> => {
	let state = seed;
	// mulberry32, public domain
	const random = () => {
		state = (state + 0x6d2b79f5) | 0;
		let t = Math.imul(state ^ (state >>> 15), 1 | state);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
	const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];
	const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
	interface Finger {
		id: number;
		x: number;
		y: number;
		dx: number;
		dy: number;
		left: number;
		size: number;
		target: Element;
		moved: boolean;
		end: 'up' | 'cancel' | 'lost' | 'vanish';
	}
	const alive: Finger[] = [];
	let id = 1000 + ((seed >>> 0) % 1_000_000);
	let done = 0;
	// what is no longer on the page hears of no finger: whatever lies under it does
	const under = ({ target, x, y }: Finger) =>
		target.isConnected ? target : (document.elementFromPoint(x, y) ?? document.body);
	const send = (finger: Finger, type: string) =>
		under(finger).dispatchEvent(
			new PointerEvent(type, {
				bubbles: true,
				cancelable: true,
				composed: true,
				pointerId: finger.id,
				pointerType: 'touch',
				isPrimary: alive.length <= 1,
				clientX: finger.x,
				clientY: finger.y,
				width: finger.size,
				height: finger.size,
				button: type === 'pointermove' ? -1 : 0,
				buttons: type === 'pointerup' || type === 'pointercancel' ? 0 : 1,
			}),
		);
	const room = location.pathname;
	while (done < gestures && location.pathname === room) {
		if (alive.length < 5 && (alive.length === 0 || random() < 0.45)) {
			// most hands reach for the teeth and the drawer
			const aim = random();
			const views = document.querySelectorAll('[role="application"], [data-lamp], [data-drawer] button');
			const box = aim < 0.45 && views.length ? pick([...views]).getBoundingClientRect() : null;
			const x = box ? box.left + random() * box.width : random() * innerWidth;
			const y = box ? box.top + random() * box.height : random() * innerHeight;
			const target = document.elementFromPoint(x, y);
			if (!target) continue;
			const tap = random() < 0.4;
			const finger: Finger = {
				id: (id += 1),
				x,
				y,
				dx: tap ? 0 : (random() - 0.5) * 60,
				dy: tap ? 0 : (random() - 0.5) * 60,
				left: tap ? 0 : Math.floor(random() * 8),
				size: random() < 0.05 ? 160 : 10 + random() * 20,
				target,
				moved: false,
				end: tap ? 'up' : pick(['up', 'up', 'up', 'up', 'up', 'cancel', 'lost', 'vanish']),
			};
			alive.push(finger);
			send(finger, 'pointerdown');
			if (random() < 0.02) send(finger, 'contextmenu');
			continue;
		}
		const index = Math.floor(random() * alive.length);
		const finger = alive[index];
		if (finger.left > 0) {
			finger.left -= 1;
			finger.x += finger.dx;
			finger.y += finger.dy;
			finger.moved = true;
			send(finger, 'pointermove');
			continue;
		}
		alive.splice(index, 1);
		done += 1;
		if (finger.end === 'up') {
			send(finger, 'pointerup');
			if (!finger.moved && finger.target.isConnected) {
				(finger.target.closest<HTMLElement>('button, a, [tabindex]') ?? document.body).focus();
				finger.target.dispatchEvent(
					new MouseEvent('click', {
						bubbles: true,
						cancelable: true,
						composed: true,
						clientX: finger.x,
						clientY: finger.y,
					}),
				);
			}
		} else if (finger.end === 'cancel') send(finger, 'pointercancel');
		else if (finger.end === 'lost') send(finger, 'lostpointercapture');
		if (random() < 0.004) window.dispatchEvent(new Event('blur'));
		if (random() < 0.01) window.dispatchEvent(new Event('resize'));
		if (done % 12 === 0) await frame();
	}
	return { gestures: done, seed: state };
};

/** The same with the browser's own fingers. */
async function realFingers(page: Page, gestures: number): Promise<void> {
	const client = await page.context().newCDPSession(page);
	let state = SEED;
	const random = () => {
		state = (Math.imul(state, 1664525) + 1013904223) >>> 0; // Numerical Recipes' generator
		return state / 4294967296;
	};
	const { width, height } = page.viewportSize()!;
	for (let i = 0; i < gestures; i += 1) {
		const count = 1 + Math.floor(random() * 3);
		const starts = Array.from({ length: count }, (_, id) => ({
			// the room's bar leads elsewhere; the storm in the page goes there
			x: random() * width,
			y: 90 + random() * (height - 90),
			id,
		}));
		const radius = random() < 0.05 ? 90 : 8;
		const points = (step: number) =>
			starts.map(({ x, y, id }) => ({
				x: Math.min(width - 1, Math.max(0, x + (id - 1) * step * 20)),
				y: Math.min(height - 1, Math.max(0, y + step * 12)),
				id,
				radiusX: radius,
				radiusY: radius,
			}));
		await client.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: points(0) });
		for (let step = 1; step <= Math.floor(random() * 4); step += 1)
			await client.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: points(step) });
		const type = random() < 0.15 ? 'touchCancel' : 'touchEnd';
		await client.send('Input.dispatchTouchEvent', { type, touchPoints: [] });
	}
	await client.detach();
}

test('5,000 random gestures break nothing: no error, one context, a screen that works', async ({ page }) => {
	test.setTimeout(240_000);
	await page.addInitScript(letSyntheticPointersBeCaptured);
	page.on('dialog', (dialog) => void dialog.dismiss());
	await page.goto('/compare');
	await ready(page);
	const started = Date.now();
	let tally: Tally = { gestures: 0, seed: SEED };
	let total = 0;
	let away = 0;
	const inRoom = () => new URL(page.url()).pathname === '/compare';
	while (total < GESTURES - REAL) {
		try {
			tally = await page.evaluate(storm, {
				gestures: Math.min(BATCH, GESTURES - REAL - total),
				seed: tally.seed,
			});
			total += tally.gestures;
		} catch (error) {
			// a whole page was loaded under the fingers
			if (!/context was destroyed|navigation/i.test(String(error))) throw error;
			tally = { gestures: 0, seed: tally.seed + 1 };
			total += 1;
		}
		if (!inRoom()) {
			away += 1;
			await ready(page);
			expect(await page.locator('canvas').count()).toBe(1);
			await page.goto('/compare');
			await ready(page);
		}
	}
	await realFingers(page, REAL);
	test.info().annotations.push({
		type: 'storm',
		description: `${total + REAL} gestures in ${Date.now() - started} ms, ${away} times in another room`,
	});

	// the screen as it was left, whatever the language, sizes and panels now are
	if (!inRoom()) {
		await page.goto('/compare');
		await ready(page);
	}
	await page.keyboard.press('Escape');
	await expect(page.locator('canvas')).toHaveCount(1);
	const stats = () => page.evaluate(() => window.toothTable!.stats());
	await expect.poll(async () => (await stats()).moving).toBe(false);
	expect(await stats()).toMatchObject({ contexts: 1, contextLosses: 0 });
	const places = await page.locator('[data-place]').count();
	expect(places).toBeGreaterThanOrEqual(2);
	expect(places).toBeLessThanOrEqual(4);

	// the tool in hand is laid down
	await page.locator('#shelf-tab-tools').tap();
	const inHand = page.locator('[data-tool][aria-pressed="true"]');
	if (await inHand.count()) await inHand.tap();

	// a tooth can still be picked
	await page.locator('#shelf-tab-drawer').tap();
	if (await page.locator('[data-drawer] .clear').count()) await page.locator('[data-drawer] .clear').tap();
	const tile = page.locator('[data-drawer] [data-specimen][aria-pressed="false"]').first();
	const id = await tile.getAttribute('data-specimen');
	await tile.scrollIntoViewIfNeeded();
	await tile.tap();
	const pane = page.locator(`[data-place][data-specimen="${id}"]`);
	await expect(pane.getByRole('application')).toHaveAttribute('data-drawn', 'true');

	// and turned
	await expect.poll(async () => (await stats()).moving).toBe(false);
	const view = pane.getByRole('application');
	await view.scrollIntoViewIfNeeded();
	const before = await pixels(view);
	await touchDrag(page, view, 120, 40);
	await expect.poll(async () => changed(before, await pixels(view))).toBeGreaterThan(0.002);
});
