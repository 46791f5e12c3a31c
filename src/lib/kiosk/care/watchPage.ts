import type { WatchMessage } from '../../workers/watchPage.worker';
import { PING_EVERY_ms } from './pageWatch';

/**
 * Has a worker watch whether this page still runs; the worker tells the server when it does not. A browser without
 * workers goes unwatched. Returns what ends it.
 */
export function watchPage(who: { name: string | null; page: string }): () => void {
	let worker: Worker;
	try {
		worker = new Worker(new URL('../../workers/watchPage.worker.ts', import.meta.url), { type: 'module' });
	} catch {
		return () => undefined;
	}
	const say = (message: WatchMessage) => worker.postMessage(message);
	say({ say: 'start', ...who });
	const seen = () => say({ say: 'hidden', hidden: document.hidden });
	seen();
	document.addEventListener('visibilitychange', seen);
	const timer = setInterval(() => say({ say: 'here' }), PING_EVERY_ms);
	return () => {
		clearInterval(timer);
		document.removeEventListener('visibilitychange', seen);
		worker.terminate();
	};
}
