import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { CDPSession } from '@playwright/test';
import { ROOT } from '../../src/scripts/setup.mjs';
import { seededRandom } from '../../src/lib/domain/random/seededRandom';
import { launch } from '../bench/launch';
import { serve } from '../bench/server';
import { growth, type Sample } from './growth';
import { visit } from './visit';

/** What the screen's own clock shows at the end; a gallery's day and more. */
const DAY_h = 12;
/** of it until memory has settled: code is compiled, pictures and shapes are kept for the next visitor */
const WARM_UP_h = 3;
const MOST_GROWTH = 0.05;
const A_FEW = 4;
const VISITS = 300;
const SEED = 20261125;
const HOUR_ms = 3_600_000;

const argument = process.argv.indexOf('--minutes');
const minutes = argument > 0 ? Number(process.argv[argument + 1]) : null;
if (minutes !== null && !(minutes >= 2)) {
	process.stderr.write('--minutes needs a number of at least 2, for example: npm run soak -- --minutes 10\n');
	process.exit(2);
}
const log = (line: string) => process.stderr.write(`${line}\n`);

const served = await serve({ contentDir: path.join(ROOT, 'content'), port: 4691 });
const browser = await launch();
// memory does not depend on the number of pixels, time does
const context = await browser.newContext({ viewport: { width: 1280, height: 720 }, hasTouch: true });
await context.addInitScript('globalThis.__name = (made) => made');
const page = await context.newPage();
const faults: string[] = [];
page.on('console', (message) => message.type() === 'error' && faults.push(`console: ${message.text()}`));
page.on('pageerror', (error) => faults.push(`uncaught: ${error.message}`));
page.on('crash', () => faults.push('the page crashed'));
page.on('request', (request) => {
	const { protocol, hostname } = new URL(request.url());
	if (/^https?:$/.test(protocol) && hostname !== 'localhost') faults.push(`outside: ${request.url()}`);
});
let loads = 0;
page.on('load', () => (loads += 1));

/** The visitor has gone: until the screen has put everything back by itself, and rests. */
async function walkOff(): Promise<number> {
	let waited_ms = 0;
	const resting = page.locator('.attract');
	while (!(await resting.isVisible())) {
		if (waited_ms > 300_000) throw new Error('the screen did not return to its start within 5 minutes');
		await page.clock.runFor(5_000);
		waited_ms += 5_000;
	}
	return waited_ms;
}

interface Look {
	heap: number;
	nodes: number;
	listeners: number;
	geometries: number;
	textures: number;
	contexts: number;
	losses: number;
	server: number;
}

/** What is held while nobody is here: on the start screen, after a collection of garbage. */
async function look(client: CDPSession, pid: number): Promise<Look> {
	await client.send('HeapProfiler.collectGarbage');
	const { metrics } = await client.send('Performance.getMetrics');
	const metric = (name: string) => metrics.find((one) => one.name === name)?.value ?? Number.NaN;
	const stats = await page.evaluate(() => window.toothTable?.stats() ?? null);
	return {
		heap: metric('JSHeapUsedSize'),
		nodes: metric('Nodes'),
		listeners: metric('JSEventListeners'),
		geometries: stats?.geometries ?? 0,
		textures: stats?.textures ?? 0,
		contexts: stats?.contexts ?? 0,
		losses: stats?.contextLosses ?? 0,
		server: await residentBytes(pid),
	};
}

/** Memory of a process, from Linux's own table; 0 elsewhere. */
async function residentBytes(pid: number): Promise<number> {
	const statm = await readFile(`/proc/${pid}/statm`, 'utf8').catch(() => '');
	return Number(statm.split(' ')[1] ?? 0) * 4096;
}

const random = seededRandom(SEED);
const samples: (Look & { at_h: number })[] = [];
const started = performance.now();
const startOfDay = new Date(2026, 10, 25, 9, 0, 0);
await page.clock.install({ time: startOfDay });
await page.goto(`${served.url}/?screen=soak`);
await page.locator('[data-ready]').waitFor();
const client = await context.newCDPSession(page);
await client.send('HeapProfiler.enable');
await client.send('Performance.enable');
// the visit that loads the stage, before anything is counted
await visit(page, client, random);
await walkOff();

const now_h = async () => ((await page.evaluate(() => Date.now())) - startOfDay.getTime()) / HOUR_ms;
let visits = 0;
const rooms = new Map<string, number>();
try {
	for (;;) {
		const at_h = await now_h();
		if (at_h >= DAY_h) break;
		// the next visitor; a touch would lay the loop's teeth on the table, a key shows the start screen
		await page.keyboard.press('Escape');
		await page.locator('.attract').waitFor({ state: 'hidden' });
		samples.push({ at_h, ...(await look(client, served.pid)) });
		for (const room of await visit(page, client, random)) rooms.set(room, (rooms.get(room) ?? 0) + 1);
		visits += 1;
		await walkOff();
		// the rest of this visitor's share of the day: nobody is here
		const done = (performance.now() - started) / 60_000;
		const share = minutes === null ? visits / VISITS : done / (minutes * 0.97);
		const to_h = Math.min(DAY_h, share * DAY_h);
		for (let left = (to_h - (await now_h())) * HOUR_ms; left > 0; left -= 60_000)
			await page.clock.fastForward(Math.min(60_000, Math.max(left, 1)));
		if (visits % 10 === 0) {
			const { heap, geometries, nodes } = samples.at(-1)!;
			log(
				`${(await now_h()).toFixed(1)} h, ${visits} visitors: heap ${(heap / 1e6).toFixed(1)} MB, ${geometries} geometries, ${nodes} nodes`,
			);
		}
	}
} catch (error) {
	faults.push(`after ${visits} visitors: ${String(error)}`);
	await page.screenshot({ path: path.join(ROOT, 'test-results', 'soak-fault.png') }).catch(() => undefined);
}

const of = (key: keyof Look): Sample[] => samples.map(({ at_h, [key]: value }) => ({ at_h, value }));
const bad: string[] = [...new Set(faults)];
const shown: Record<string, string> = {};
if (samples.filter(({ at_h }) => at_h >= WARM_UP_h).length >= 8) {
	for (const key of ['heap', 'nodes', 'listeners', 'geometries', 'textures', 'server'] as const) {
		const { first, last, share } = growth(of(key), WARM_UP_h);
		shown[key] = `${first} -> ${last} (${(share * 100).toFixed(1)} %)`;
		// two teeth rest on the start screen, three at times: of what is counted in ones a few more are no growth
		const few = key === 'geometries' || key === 'textures' ? A_FEW : 0;
		if (share >= MOST_GROWTH && last - first > few)
			bad.push(`${key} grew by ${(share * 100).toFixed(1)} %: ${shown[key]}`);
	}
} else bad.push(`only ${samples.length} visitors: too few to tell growth`);
const contexts = Math.max(...samples.map((sample) => sample.contexts));
if (contexts !== 1) bad.push(`${contexts} WebGL contexts at once`);
if (samples.some(({ losses }) => losses > 0)) bad.push('the WebGL context was lost');

await browser.close();
await served.stop();
const result = {
	visits,
	rooms: Object.fromEntries(rooms),
	hours: DAY_h,
	minutes: Math.round((performance.now() - started) / 6000) / 10,
	loads,
	contexts,
	growth: shown,
	faults: bad,
};
process.stdout.write(`${JSON.stringify(result, null, '\t')}\n`);
process.exit(bad.length ? 1 : 0);
