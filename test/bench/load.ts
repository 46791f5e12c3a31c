import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { Agent, get, request } from 'node:http';
import os from 'node:os';
import path from 'node:path';
import { ROOT } from '../../src/scripts/setup.mjs';
import { serve } from './server';

const SCREENS = 50;
const ROUNDS = 6;
const EDITS = 8;
/** what a screen asks for when it goes to a room */
const PAGES = ['/', '/compare', '/feeding', '/replacement', '/quiz'];

/** The value below which 99 of 100 lie; the largest where there are fewer than 100. */
function p99(values: number[]): number {
	const sorted = [...values].sort((a, b) => a - b);
	return sorted[Math.min(sorted.length - 1, Math.ceil(sorted.length * 0.99) - 1)];
}
const ms = (value: number) => `${Math.round(value)} ms`;

/** An open event stream; `hash` is that of the last exhibit that it was told of. */
async function listen(url: string) {
	const heard = { hash: '', at_ms: 0 };
	const stream = get(`${url}/live`, (response) => {
		let text = '';
		response.setEncoding('utf8').on('data', (part: string) => {
			text += part;
			for (let end = text.indexOf('\n\n'); end >= 0; end = text.indexOf('\n\n')) {
				const hash = /"hash":"([0-9a-f]+)"/.exec(text.slice(0, end))?.[1];
				text = text.slice(end + 2);
				if (hash) Object.assign(heard, { hash, at_ms: performance.now() });
			}
		});
	});
	stream.on('error', () => undefined);
	const from = performance.now();
	while (!heard.hash && performance.now() - from < 10_000) await pause(5);
	return { heard, end: () => stream.destroy() };
}
const pause = (time_ms: number) => new Promise((resolve) => setTimeout(resolve, time_ms));

/** Milliseconds until the whole answer is here. */
function timed(url: string, agent: Agent): Promise<number> {
	const from = performance.now();
	return new Promise((resolve, reject) => {
		request(url, { agent }, (response) => {
			if (response.statusCode !== 200) reject(new Error(`${url}: ${response.statusCode}`));
			response.on('end', () => resolve(performance.now() - from)).resume();
		})
			.on('error', reject)
			.end();
	});
}

/**
 * One server, fifty screens: each keeps its event stream open and walks from room to room, a touch every second or so,
 * while a curator saves a text again and again. Screens are simulated by what they ask of the server; nothing is drawn.
 */
export async function benchLoad() {
	const folder = await mkdtemp(path.join(os.tmpdir(), 'tooth-table-load-'));
	await cp(path.join(ROOT, 'content'), folder, { recursive: true });
	const served = await serve({ contentDir: folder, port: 4395 });
	const agent = new Agent({ keepAlive: true, maxSockets: SCREENS * 2 });
	try {
		const screens = await Promise.all(Array.from({ length: SCREENS }, () => listen(served.url)));
		const pages: number[] = [];
		const updates: number[] = [];
		const walk = async (screen: number) => {
			await pause(screen * 20);
			for (let round = 0; round < ROUNDS; round += 1)
				for (const page of PAGES) {
					const data = page === '/' ? '/__data.json' : `${page}/__data.json`;
					pages.push(await timed(`${served.url}${data}`, agent));
					await pause(200);
				}
		};
		const edit = async () => {
			const file = path.join(folder, 'specimens', 'skm-0137', 'label.en.md');
			const original = await readFile(file, 'utf8');
			for (let i = 0; i < EDITS; i += 1) {
				await pause(600);
				const before = screens[0].heard.hash;
				const saved = performance.now();
				await writeFile(file, original.replace(/^title: .*$/m, `title: Edited ${i}`));
				while (screens.some(({ heard }) => heard.hash === before) && performance.now() - saved < 10_000)
					await pause(2);
				updates.push(...screens.map(({ heard }) => heard.at_ms - saved));
			}
		};
		await Promise.all([edit(), ...screens.map((_, i) => walk(i))]);
		screens.forEach(({ end }) => end());
		return [
			{
				what: `${SCREENS} screens on one server: a room's data, p99`,
				measured: ms(p99(pages)),
				goal: '',
				beside: `${pages.length} answers, half of them within ${ms(pages.sort((a, b) => a - b)[Math.floor(pages.length / 2)])}`,
			},
			{
				what: `${SCREENS} screens on one server: a saved text told to a screen, p99`,
				measured: ms(p99(updates)),
				goal: '',
				beside: `${updates.length} times told, half of them within ${ms(updates.sort((a, b) => a - b)[Math.floor(updates.length / 2)])}`,
			},
		];
	} finally {
		agent.destroy();
		const { dataDir } = served;
		await served.stop();
		await rm(folder, { recursive: true, force: true });
		await rm(dataDir, { recursive: true, force: true });
	}
}
