import { writeFile, readFile } from 'node:fs/promises';
import path from 'node:path';
import { CONTENT, expect, ready, test } from './helpers';
import { ROOMS } from './rooms';

/** Screens for a gallery: diagonal in inches, px. */
const SCREENS = [
	{ diagonal_in: 21.5, width: 1920, height: 1080 },
	{ diagonal_in: 32, width: 1920, height: 1080 },
	{ diagonal_in: 55, width: 3840, height: 2160 },
];
/** what each room is for: the rest is secondary */
const PRIMARY =
	'.home, .settings, [data-room], .buttons button, .shelf .slide, [data-specimen]:is(button), [data-lamp]';

const file = path.join(CONTENT, 'exhibit.yaml');
let before = '';
test.beforeAll(async () => {
	before = await readFile(file, 'utf8');
});
test.afterAll(async () => {
	await writeFile(file, before);
});

for (const { diagonal_in, width, height } of SCREENS) {
	test(`controls and letters in millimetres on a screen of ${diagonal_in} inch, ${width} x ${height}`, async ({
		page,
		request,
	}) => {
		const pxPerMm = Math.hypot(width, height) / (diagonal_in * 25.4);
		await writeFile(
			file,
			before
				.replace(/diagonal_in: .*/, `diagonal_in: ${diagonal_in}`)
				.replace(/width_px: .*/, `width_px: ${width}`)
				.replace(/height_px: .*/, `height_px: ${height}`),
		);
		await expect
			.poll(async () => (await request.get('/')).text())
			.toContain(`--screen-mm: ${pxPerMm.toFixed(4)}px`);
		await page.setViewportSize({ width, height });
		for (const address of ROOMS) {
			await page.goto(address);
			await ready(page);
			const controls = await page.locator('a[href], button, [role="slider"]').evaluateAll(
				(elements, primary) =>
					elements
						.map((element) => {
							const { width: w, height: h } = element.getBoundingClientRect();
							return {
								least: Math.min(w, h),
								primary: element.matches(primary),
								html: element.outerHTML.slice(0, 90),
							};
						})
						.filter(({ least }) => least > 0),
				PRIMARY,
			);
			expect(controls.length).toBeGreaterThan(5);
			const small = controls.filter(({ least, primary }) => {
				// 20 and 12 mm: Colle & Hiszem 2004 and the screen sizes worked in test/unit/ui/pxPerMm.test.ts; 44 px: WCAG 2.5.5
				return least < Math.max(44, (primary ? 20 : 12) * pxPerMm) - 0.5;
			});
			expect(small.map(({ least, html }) => `${(least / pxPerMm).toFixed(1)} mm ${html}`)).toEqual([]);

			// Section 508, 402.4: capitals of 4.8 mm, without the visitor having to enlarge them where the screen has room
			// for 54 lines of that, else with the first step of large text
			const share = await page.evaluate(() => {
				const context = document.createElement('canvas').getContext('2d')!;
				context.font = `1000px ${getComputedStyle(document.body).fontFamily}`;
				return context.measureText('I').actualBoundingBoxAscent / 1000;
			});
			const sizes = await page.evaluate(() => {
				const found = new Map<number, string>();
				const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
				for (let node = walker.nextNode(); node; node = walker.nextNode()) {
					const parent = node.parentElement!;
					if (!node.textContent?.trim() || parent.closest('.unseen, script, style, .drawn, dialog')) continue;
					if (parent.getClientRects().length === 0) continue;
					// letters in a drawing are as large as the drawing makes them
					const scale = parent instanceof SVGGraphicsElement ? (parent.getScreenCTM()?.a ?? 1) : 1;
					const size = Number.parseFloat(getComputedStyle(parent).fontSize) * scale;
					if (!found.has(size)) found.set(size, parent.outerHTML.slice(0, 90));
				}
				return [...found];
			});
			const step = diagonal_in < 32 ? 1.5 : 1;
			const low = sizes.filter(([size]) => (size * step * share) / pxPerMm < 4.75);
			expect(low.map(([size, html]) => `${((size * share) / pxPerMm).toFixed(2)} mm ${html}`)).toEqual([]);
		}
	});
}
