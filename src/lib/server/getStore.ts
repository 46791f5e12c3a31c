import { resolve } from 'node:path';
import { createExhibitStore, type ExhibitStore } from './exhibitStore';
import { terminalLogger } from './logger';

const KEY = Symbol.for('tooth-table.exhibit-store');

/** Where this server keeps what it has worked out: DATA_DIR, else ./data. */
export const dataDir = (): string => resolve(process.env.DATA_DIR || 'data');

/** Where the exhibit's files are: CONTENT_DIR, else ./content. */
export const contentDir = (): string => resolve(process.env.CONTENT_DIR || 'content');

/**
 * The process's one exhibit store, made at the first call. It hangs on globalThis, so that a module
 * reloaded while developing finds the store that is already running.
 */
export function getStore(): ExhibitStore {
	const shared = globalThis as { [KEY]?: ExhibitStore };
	if (!shared[KEY]) {
		shared[KEY] = createExhibitStore({
			contentDir: contentDir(),
			dataDir: dataDir(),
			logger: terminalLogger,
			watch: true,
		});
		closeOnSignal(shared[KEY], 'SIGTERM');
		closeOnSignal(shared[KEY], 'SIGINT');
	}
	return shared[KEY];
}

/** Ends open event streams at once, so that the server need not wait for its visitors to leave. */
function closeOnSignal(store: ExhibitStore, signal: 'SIGTERM' | 'SIGINT'): void {
	process.once(signal, () => {
		const others = process.listenerCount(signal);
		void store.close().then(() => {
			// nobody else ends the process: do what the signal does by itself
			if (others === 0) process.kill(process.pid, signal);
		});
	});
}
