import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { KIND, type ExportList } from '../../../../src/lib/kiosk/offline/exportList';
import { OfflineExhibit } from '../../../../src/lib/kiosk/offline/offlineExhibit';

const ROOT = 'http://localhost/teeth/';
const sha = (text: string | Uint8Array) => createHash('sha256').update(text).digest('hex');

/** Caches as a browser keeps them: they outlive the worker. */
function fakeCaches() {
	const all = new Map<string, Map<string, { bytes: ArrayBuffer; headers: [string, string][] }>>();
	return {
		all,
		keys: () => Promise.resolve([...all.keys()]),
		delete: (name: string) => Promise.resolve(all.delete(name)),
		open(name: string) {
			const entries = all.get(name) ?? new Map();
			all.set(name, entries);
			return Promise.resolve({
				async put(address: string, response: Response) {
					entries.set(address, { bytes: await response.arrayBuffer(), headers: [...response.headers] });
				},
				match(address: string) {
					const found = entries.get(address);
					return Promise.resolve(found && new Response(found.bytes.slice(0), { headers: found.headers }));
				},
			} as unknown as Cache);
		},
	};
}

function site(caches = fakeCaches()) {
	const state = {
		files: {} as Record<string, string>,
		/** what the network does to a file */
		broken: new Map<string, 'cut' | 'garbled' | 'missing'>(),
		asked: [] as string[],
		pages: [] as { id: string; window: boolean }[],
	};
	const list = (): ExportList => ({
		kind: KIND,
		version: sha(JSON.stringify(state.files)).slice(0, 8),
		exhibit: `exhibit-${state.files['index.html']}`,
		code: 'code',
		files: Object.entries(state.files).map(([path, text]) => ({
			path,
			bytes: text.length,
			sha256: sha(text),
		})),
	});
	const worker = () =>
		new OfflineExhibit({
			root: ROOT,
			caches,
			fetch(address) {
				const path = address.slice(ROOT.length);
				state.asked.push(path);
				const fault = state.broken.get(path);
				if (fault === 'cut') return Promise.reject(new TypeError('Failed to fetch'));
				if (path === 'export.json') return Promise.resolve(new Response(JSON.stringify(list())));
				if (fault === 'missing') return Promise.resolve(new Response('', { status: 404 }));
				const body = fault === 'garbled' ? 'half a fi' : state.files[path];
				return Promise.resolve(
					new Response(body, {
						headers: { 'content-type': 'text/x', 'content-encoding': 'gzip', vary: '*' },
					}),
				);
			},
			sha256: (bytes) => Promise.resolve(sha(new Uint8Array(bytes))),
			pages: () => Promise.resolve(state.pages),
		});
	return { state, list, worker, caches };
}

type Exhibit = OfflineExhibit;
const textOf = async (answer: Promise<Response | null>) => (await answer)?.text() ?? null;
const open = (exhibit: Exhibit, id: string, path = '') =>
	textOf(exhibit.answer(ROOT + path, { page: '', opens: id, navigates: true }));
const ask = (exhibit: Exhibit, id: string, path: string) =>
	textOf(exhibit.answer(ROOT + path, { page: id, opens: null, navigates: false }));

const one = {
	'index.html': 'start 1',
	'compare/index.html': 'compare 1',
	'a.js': 'same',
	'__data.json': 'data 1',
};
const two = { ...one, 'index.html': 'start 2', '__data.json': 'data 2' };

describe('OfflineExhibit', () => {
	it('keeps all of an export and answers from it', async () => {
		const { state, worker } = site();
		state.files = one;
		const exhibit = worker();
		expect(await open(exhibit, 'p')).toBe(null);
		expect(await exhibit.list()).toBe(null);
		expect(await exhibit.keep()).toEqual({ exhibit: 'exhibit-start 1', code: 'code' });
		state.broken.set('export.json', 'cut');
		expect(await open(exhibit, 'p')).toBe('start 1');
		const led = await exhibit.answer(`${ROOT}compare?teeth=a`, { page: '', opens: 'p', navigates: true });
		expect([led?.status, led?.headers.get('location')]).toEqual([302, `${ROOT}compare/?teeth=a`]);
		expect(await open(exhibit, 'p', 'compare/?teeth=a')).toBe('compare 1');
		expect(await open(exhibit, 'p', 'compare/')).toBe('compare 1');
		expect(await ask(exhibit, 'p', 'a.js?v=1')).toBe('same');
		expect(await ask(exhibit, 'p', 'none.js')).toBe(null);
		expect(await (await exhibit.list())?.text()).toContain(KIND);
		// nobody can look, and what is here stays
		expect(await exhibit.keep()).toEqual({ exhibit: 'exhibit-start 1', code: 'code' });
		const answer = await exhibit.answer(`${ROOT}a.js`, { page: 'p', opens: null, navigates: false });
		expect([...(answer?.headers ?? [])]).toEqual([['content-type', 'text/x']]);
	});

	it('fetches a newer one whole, only what changed, and shows it to nobody before it is taken', async () => {
		const { state, worker, caches } = site();
		state.files = one;
		const exhibit = worker();
		await exhibit.keep();
		state.pages = [{ id: 'visitor', window: true }];
		await open(exhibit, 'visitor');
		state.files = two;
		state.asked = [];
		expect(await exhibit.keep()).toEqual({ exhibit: 'exhibit-start 2', code: 'code' });
		expect(state.asked.sort()).toEqual(['__data.json', 'export.json', 'index.html']);
		expect(await ask(exhibit, 'visitor', '__data.json')).toBe('data 1');
		// the browser ended the worker meanwhile, and another tab is opened
		const again = worker();
		state.pages.push({ id: 'other', window: true });
		expect(await open(again, 'other')).toBe('start 1');
		await again.take();
		expect(await open(again, 'new')).toBe('start 2');
		// who began with the old one goes on with it
		expect(await ask(again, 'visitor', '__data.json')).toBe('data 1');
		expect(await ask(again, 'new', '__data.json')).toBe('data 2');
		state.pages = [{ id: 'new', window: true }];
		await again.keep();
		expect([...caches.all.keys()].filter((name) => name.includes('version-'))).toHaveLength(1);
		expect(await ask(again, 'new', 'compare/')).toBe('compare 1');
	});

	it('takes it by itself when a page is opened while no other is', async () => {
		const { state, worker } = site();
		state.files = one;
		const exhibit = worker();
		await exhibit.keep();
		state.files = two;
		await exhibit.keep();
		expect(await open(exhibit, 'first')).toBe('start 2');
	});

	it.each(['cut', 'garbled', 'missing'] as const)(
		'keeps the old one whole when a file is %s',
		async (fault) => {
			const { state, worker, list } = site();
			state.files = one;
			const exhibit = worker();
			await exhibit.keep();
			state.files = two;
			state.broken.set('__data.json', fault);
			expect(await exhibit.keep()).toEqual({ exhibit: 'exhibit-start 1', code: 'code' });
			expect(await open(exhibit, 'p')).toBe('start 1');
			expect(await ask(exhibit, 'p', '__data.json')).toBe('data 1');
			// the next try goes on where the last one stopped
			state.broken.clear();
			state.asked = [];
			expect(await exhibit.keep()).toEqual({ exhibit: list().exhibit, code: 'code' });
			expect(state.asked).not.toContain('a.js');
			expect(await open(exhibit, 'q')).toBe('start 2');
		},
	);

	it('forgets one that was taken back before anybody saw it', async () => {
		const { state, worker } = site();
		state.files = one;
		const exhibit = worker();
		await exhibit.keep();
		state.files = two;
		await exhibit.keep();
		state.files = one;
		expect(await exhibit.keep()).toEqual({ exhibit: 'exhibit-start 1', code: 'code' });
		await exhibit.take();
		expect(await open(exhibit, 'p')).toBe('start 1');
	});

	it('begins anew where the browser has thrown a version away', async () => {
		const { state, worker, caches } = site();
		state.files = one;
		await worker().keep();
		for (const name of [...caches.all.keys()]) if (name.includes('version-')) caches.all.delete(name);
		const exhibit = worker();
		expect(await open(exhibit, 'p')).toBe(null);
		await exhibit.keep();
		expect(await open(exhibit, 'p')).toBe('start 1');
	});
});
