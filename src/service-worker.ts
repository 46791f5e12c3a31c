/// <reference lib="webworker" />
// Serves an export without a network. What it keeps and when it changes: lib/kiosk/offline/offlineExhibit.ts.
import { LIST } from './lib/kiosk/offline/exportList';
import { OfflineExhibit } from './lib/kiosk/offline/offlineExhibit';

const worker = self as unknown as ServiceWorkerGlobalScope;
const root = worker.registration.scope;

const exhibit = new OfflineExhibit({
	root,
	caches: worker.caches,
	fetch: (address, init) => fetch(address, init),
	async sha256(bytes) {
		const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
		return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
	},
	async pages() {
		const open = await worker.clients.matchAll({ type: 'all', includeUncontrolled: true });
		return open.map(({ id, type }) => ({ id, window: type === 'window' }));
	},
});

worker.addEventListener('install', () => void worker.skipWaiting());
worker.addEventListener('activate', (event) => event.waitUntil(worker.clients.claim()));

worker.addEventListener('message', (event) => {
	const [port] = event.ports;
	const wish = event.data as 'keep' | 'take';
	const done = wish === 'take' ? exhibit.take().then(() => null) : exhibit.keep();
	event.waitUntil(
		done.then(
			(offered) => port?.postMessage(offered),
			() => port?.postMessage(null),
		),
	);
});

worker.addEventListener('fetch', (event) => {
	const { request } = event;
	if (request.method !== 'GET' || !request.url.startsWith(root)) return;
	const inside = new URL(request.url).pathname.slice(new URL(root).pathname.length);
	if (inside === 'service-worker.js') return;
	event.respondWith(inside === LIST ? newest(request) : kept(event));
});

/** The list as it is now; without a network the one that was kept, so that nothing fails. */
const newest = (request: Request): Promise<Response> =>
	fetch(request).catch(async (cause: unknown) => {
		const list = await exhibit.list();
		if (list) return list;
		throw cause;
	});

async function kept(event: FetchEvent): Promise<Response> {
	const { request } = event;
	const found = await exhibit.answer(request.url, {
		page: event.clientId,
		opens: event.resultingClientId || null,
		navigates: request.mode === 'navigate',
	});
	return found ?? fetch(request);
}
