import { rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { CONTENT, expect, ready, test } from './helpers';

/** Ten seconds of silence: frames of MPEG-1 Layer III, 128 kbit/s, 44.1 kHz (417 bytes each), all zero but for their heads. */
function silence(): Buffer {
	const frame = Buffer.alloc(417);
	frame.set([0xff, 0xfb, 0x90, 0x00]);
	return Buffer.concat(Array.from({ length: 383 }, () => frame));
}
const file = path.join(CONTENT, 'specimens/skm-0104/label.en.mp3');
test.beforeAll(async () => {
	await writeFile(file, silence());
});
test.afterAll(async () => {
	await rm(file);
});

test('a label with a recording is read aloud on a touch, stops on another, and never begins by itself', async ({
	page,
	request,
}) => {
	await page.addInitScript(() => {
		// a machine without voices
		Object.defineProperty(window, 'speechSynthesis', { value: undefined, configurable: true });
		const play = HTMLMediaElement.prototype.play;
		const heard: HTMLMediaElement[] = [];
		Object.assign(window, { heard });
		HTMLMediaElement.prototype.play = function () {
			heard.push(this);
			return play.call(this);
		};
	});
	const heard = () =>
		page.evaluate(() => {
			const all = (window as unknown as { heard: HTMLMediaElement[] }).heard;
			return {
				begun: all.length,
				sounding: all.filter(({ paused }) => !paused).length,
				volume: all.at(-1)?.volume,
			};
		});
	await page.goto('/compare?teeth=skm-0104,skm-0131');
	await ready(page);
	const listen = page.locator('[data-place="1"] [data-listen]');
	await expect(listen).toHaveText('Listen');
	// without a recording or a voice there is no button
	await expect(page.locator('[data-place="2"] [data-listen]')).toHaveCount(0);
	expect(await heard()).toEqual({ begun: 0, sounding: 0, volume: undefined });

	await listen.click();
	await expect(listen).toHaveText('Stop');
	await expect.poll(async () => (await heard()).sounding).toBe(1);
	await listen.click();
	await expect(listen).toHaveText('Listen');
	expect((await heard()).sounding).toBe(0);

	// louder while it sounds; and again from the start
	await listen.click();
	const soft = (await heard()).volume!;
	await page.getByRole('button', { name: 'Settings' }).click();
	await page.getByRole('dialog').getByRole('button', { name: 'Louder' }).click();
	await page.getByRole('dialog').getByRole('button', { name: 'Louder' }).click();
	expect((await heard()).volume).toBeGreaterThan(soft);
	await page.keyboard.press('Escape');
	expect((await heard()).sounding).toBe(1);

	// another language, another tooth and another room end it
	await page.locator('a[hreflang="fr"]').click();
	await expect.poll(async () => (await heard()).sounding).toBe(0);
	await expect(page.locator('[data-place="1"] [data-listen]')).toHaveCount(0);
	await page.locator('a[hreflang="en"]').click();
	await listen.click();
	await expect.poll(async () => (await heard()).sounding).toBe(1);
	await page.locator('.home').click();
	await page.locator('.start[data-ready]').waitFor();
	expect((await heard()).sounding).toBe(0);

	const part = await request.get('/sounds/skm-0104/en.mp3', { headers: { range: 'bytes=0-3' } });
	expect(part.status()).toBe(206);
	expect([...(await part.body())]).toEqual([0xff, 0xfb, 0x90, 0x00]);
	expect((await request.get('/sounds/skm-0104/fr.mp3')).status()).toBe(404);
});

test('without a recording a voice of this machine reads, in the language shown, and only if it speaks it', async ({
	page,
}) => {
	await page.addInitScript(() => {
		const spoken: string[] = [];
		const synth = Object.assign(new EventTarget(), {
			getVoices: () => [
				{ lang: 'es-ES', localService: true, name: 'Here' },
				{ lang: 'fr-FR', localService: false, name: 'Far' },
			],
			speak: (utterance: { lang: string; text: string }) =>
				spoken.push(`${utterance.lang} ${utterance.text}`),
			cancel: () => spoken.push('silence'),
		});
		Object.defineProperty(window, 'speechSynthesis', { value: synth, configurable: true });
		// the real one refuses voices that are not its own
		Object.defineProperty(window, 'SpeechSynthesisUtterance', {
			value: class {
				lang = '';
				constructor(readonly text: string) {}
			},
		});
		Object.assign(window, { spoken });
	});
	const spoken = () => page.evaluate(() => (window as unknown as { spoken: string[] }).spoken);
	await page.goto('/compare?teeth=skm-0107,skm-0131&lang=fr');
	await ready(page);
	await expect(page.locator('[data-listen]')).toHaveCount(0);
	await page.locator('a[hreflang="es"]').click();
	const listen = page.locator('[data-place="1"] [data-listen]');
	await expect(listen).toBeVisible();
	const title = await page.locator('[data-place="1"] h2').innerText();
	await listen.click();
	const words = await spoken();
	expect(words.every((line) => line.startsWith('es-ES '))).toBe(true);
	expect(words.length).toBeGreaterThan(2);
	expect(words[0].replace(/\s+/g, ' ')).toContain(title.replace(/\s+/g, ' '));
	// the other card takes over: never two at once
	await page.locator('[data-place="2"] [data-listen]').click();
	await expect(listen).toHaveAttribute('data-listen', 'off');
	expect(await spoken()).toContain('silence');
});
