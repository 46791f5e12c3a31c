import { spawn, type ChildProcess } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { AxeBuilder } from './axe';
import { allowFault, CONTENT, expect, ORIGIN, ready, test } from './helpers';

// Staff set the first passphrase, sign in and out, and open the staff corner of a gallery's screen.

const ROOT = path.resolve(CONTENT, '../../..');
const SERVED = path.resolve(CONTENT, '../data');
const DATA = path.resolve(SERVED, '../staff-data');
const origin = `http://localhost:${Number(new URL(ORIGIN).port) + 2}`;
const PASSPHRASE = 'a drawer full of teeth';
const PIN = '120934';
const HOLD_ms = 3_000;

test.describe.configure({ mode: 'serial' });

let server: ChildProcess;
test.beforeAll(async () => {
	rmSync(DATA, { recursive: true, force: true });
	mkdirSync(DATA, { recursive: true });
	cpSync(SERVED, DATA, { recursive: true, filter: (file) => !/staff|counts\.db/.test(path.basename(file)) });
	server = spawn(process.execPath, ['src/scripts/start.mjs'], {
		cwd: ROOT,
		env: {
			...process.env,
			PORT: new URL(origin).port,
			HOST: '127.0.0.1',
			CONTENT_DIR: CONTENT,
			DATA_DIR: DATA,
			STAFF_PASSPHRASE_FILE: '',
			DATABASE_URL: '',
		},
		stdio: 'ignore',
	});
	const up = () =>
		fetch(`${origin}/healthz`).then(
			({ ok }) => ok,
			() => false,
		);
	await expect.poll(up, { timeout: 60_000 }).toBe(true);
});
test.afterAll(async () => {
	const ended = new Promise((resolve) => server.once('exit', resolve));
	server.kill('SIGKILL');
	await ended;
	rmSync(DATA, { recursive: true, force: true });
});

const sheet = (page: Page) => page.locator('dialog[data-staff]');
const axe = async (page: Page) => expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);

/** Holds one finger in the staff corner for so long, by the page's own clock. */
async function hold(page: Page, ms: number): Promise<void> {
	const client = await page.context().newCDPSession(page);
	const touchPoints = [{ x: 1_900, y: 24, id: 1 }];
	await client.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints });
	await page.clock.runFor(ms / 2);
	await expect(page.locator('[data-staff-ring]')).toBeVisible();
	if (process.env.STAFF_SHOTS) await page.screenshot({ path: `${process.env.STAFF_SHOTS}/ring.png` });
	await page.clock.runFor(ms / 2);
	await client.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
	await client.detach();
}
/** Opens a page whose clock is ours, once what comes in the background has come. */
async function open(page: Page, address: string): Promise<void> {
	await page.clock.install();
	await page.goto(origin + address);
	await ready(page);
	await page.clock.runFor(2_000);
	await page.waitForLoadState('networkidle').catch(() => undefined);
	await page.clock.runFor(500);
}
const shot = async (page: Page, name: string) => {
	if (process.env.STAFF_SHOTS) await page.screenshot({ path: `${process.env.STAFF_SHOTS}/${name}.png` });
};

test('the first passphrase is set at the desk; who is signed out is asked for it', async ({ page }) => {
	allowFault(page, /status of (409|429)/);
	const passphrase = page.locator('#passphrase');
	const again = page.locator('#again');
	await page.goto(`${origin}/desk/quiz`);
	await expect(page).toHaveURL(/\/desk\/enter\?to=%2Fdesk%2Fquiz$/);
	await ready(page);
	await axe(page);
	await shot(page, 'first');

	await passphrase.fill('elevenchars');
	await again.fill('elevenchars');
	await again.press('Enter');
	await expect(passphrase).toHaveAccessibleDescription(/at least 12 characters/);
	await expect(passphrase).toBeFocused();
	await passphrase.fill(PASSPHRASE);
	await again.fill(`${PASSPHRASE}s`);
	await page.getByRole('button', { name: 'Show' }).click();
	await expect(passphrase).toHaveAttribute('type', 'text');
	await expect(again).toHaveAttribute('type', 'text');
	await page.locator('button[type=submit]').click();
	await expect(again).toHaveAccessibleDescription(/not the same/);
	await again.fill(PASSPHRASE);
	await page.locator('button[type=submit]').click();
	await expect(page).toHaveURL(/\/desk\/quiz/);
	const kept = path.join(DATA, 'staff.json');
	expect(readFileSync(kept, 'utf8')).not.toContain('drawer');
	expect(statSync(kept).mode & 0o777).toBe(0o600);
	const [cookie] = (await page.context().cookies()).filter(({ name }) => name === 'tooth-table-staff');
	expect(cookie).toMatchObject({ httpOnly: true, sameSite: 'Strict', path: '/' });

	// out, and in again by the words of another language
	await page.getByRole('button', { name: 'Sign out' }).click();
	await page.waitForURL(/\/desk\/enter/);
	for (const [lang, label] of [
		['es', 'Frase de paso'],
		['fr', 'Phrase de passe'],
	]) {
		await page.goto(`${origin}/desk/screen?lang=${lang}`);
		await expect(page).toHaveURL(/\/desk\/enter/);
		await ready(page);
		await expect(page.getByLabel(label, { exact: true })).toBeVisible();
		await axe(page);
	}
	await expect(again).toHaveCount(0);
	await passphrase.fill('something else entirely');
	await passphrase.press('Enter');
	await expect(passphrase).toHaveAccessibleDescription(/Ce n’est pas la phrase de passe/);
	await shot(page, 'wrong');
	await passphrase.fill(PASSPHRASE);
	await passphrase.press('Enter');
	await expect(page).toHaveURL(/\/desk\/screen\?lang=fr/);
});

test('without a PIN the staff corner says so and closes by itself; a tap there does what it always does', async ({
	page,
}) => {
	await open(page, '/compare?screen=hall');
	await hold(page, HOLD_ms + 200);
	await expect(sheet(page)).toContainText('No PIN is set yet');
	await shot(page, 'unset');
	await page.clock.runFor(21_000);
	await expect(sheet(page)).toHaveCount(0);
	// the corner holds a button of the room: it opens nothing after a long touch, and everything after a short one
	await page.clock.runFor(1_000);
	await page.touchscreen.tap(1_900, 24);
	await expect(page.locator('[data-staff-ring]')).toHaveCount(0);
});

test('the PIN is set at the desk, and opens cleaning mode by touch', async ({ page }) => {
	allowFault(page, /status of (401|409|429)/);
	await page.goto(`${origin}/desk/access`);
	await page.locator('#passphrase').fill(PASSPHRASE);
	await page.locator('#passphrase').press('Enter');
	await expect(page.locator('[data-form=pin]')).toBeVisible();
	await axe(page);
	await page.locator('#pin').fill('123456');
	await page.locator('#pin').press('Enter');
	await expect(page.locator('#pin')).toHaveAccessibleDescription(/six in a row/);
	await page.locator('#pin').fill(PIN);
	await page.locator('#pin').press('Enter');
	await expect(page.getByText('The PIN is set.')).toBeVisible();
	await shot(page, 'access');
	await page.context().clearCookies();

	await open(page, '/compare?screen=hall&lang=fr');
	await hold(page, HOLD_ms + 200);
	await expect(sheet(page)).toHaveAccessibleName('Pour le personnel');
	const type = async (pin: string) => {
		for (const digit of pin) await sheet(page).getByRole('button', { name: digit, exact: true }).tap();
	};
	await type('111');
	await shot(page, 'pin');
	await axe(page);
	await type('222');
	await expect(sheet(page).getByRole('alert')).toHaveText('Ce n’est pas le code PIN.');
	await type(PIN);
	await expect(sheet(page)).toHaveAttribute('data-staff', 'open');
	await axe(page);
	await shot(page, 'open');
	await page.locator('[data-clean="30"]').tap();
	await expect(page.locator('[data-left]')).toHaveText('30');
	await shot(page, 'clean');
	await page.clock.runFor(20_000);
	// a cloth does nothing
	for (const [x, y] of [
		[60, 60],
		[960, 540],
		[1_900, 1_060],
	])
		await page.touchscreen.tap(x, y);
	expect(Number(await page.locator('[data-left]').innerText())).toBeLessThanOrEqual(10);
	await page.clock.runFor(11_000);
	await page.waitForURL(`${origin}/`);
	await expect(sheet(page)).toHaveCount(0);
	expect(await page.evaluate(() => sessionStorage.getItem('tooth-table-screen'))).toBe('hall');
});

test('by keys: the PIN opens the measuring of the screen, and not the desk', async ({ page }) => {
	await open(page, '/?screen=hall&lang=es');
	await page.keyboard.press('Control+Shift+F8');
	await expect(sheet(page)).toHaveAccessibleName('Para el personal');
	await page.keyboard.press('Escape');
	await expect(sheet(page)).toHaveCount(0);
	await page.keyboard.press('Control+Shift+F8');
	await sheet(page).getByRole('button', { name: '5' }).waitFor();
	await page.keyboard.type('99');
	await page.keyboard.press('Backspace');
	await page.keyboard.press('Backspace');
	await page.keyboard.type(PIN);
	await expect(sheet(page)).toHaveAttribute('data-staff', 'open');
	await page.getByRole('link', { name: 'Medir esta pantalla' }).click();
	await expect(page).toHaveURL(/\/desk\/screen/);
	await page.goto(`${origin}/desk?lang=es`);
	await expect(page).toHaveURL(/\/desk\/enter/);
	// nobody comes: the gallery's screen goes back to its start
	await ready(page);
	await page.clock.runFor(62_000);
	await page.waitForURL(`${origin}/`);
});
