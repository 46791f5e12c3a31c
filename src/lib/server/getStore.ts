import { getDeskFiles } from './desk/getDeskFiles';
import { contentDir, dataDir } from './dirs';
import { createExhibitStore, type ExhibitStore } from './exhibitStore';
import { getServerLog } from './log/serverLog';

const KEY = Symbol.for('tooth-table.exhibit-store');

export { contentDir, dataDir };

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
			logger: getServerLog(),
			watch: true,
			onRead: noticeSoon(),
		});
		// what a save that was cut off had left to do may come before the watching
		void getDeskFiles().ready.then(() => shared[KEY]?.reload());
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

/** Time in which an edit reaches the screen before what it changed is kept as a version. */
const NOTICE_AFTER_MS = 500;

/** Keeps what a text editor changed, once the screen has it. */
function noticeSoon(): () => void {
	let timer: NodeJS.Timeout | null = null;
	return () => {
		if (timer) clearTimeout(timer);
		timer = setTimeout(() => {
			getDeskFiles()
				.notice()
				.catch((cause: unknown) =>
					getServerLog().warn(`What was changed could not be kept as a version: ${String(cause)}`),
				);
		}, NOTICE_AFTER_MS);
		timer.unref();
	};
}
