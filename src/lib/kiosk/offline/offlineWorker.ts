import type { Offered } from './offlineExhibit';

export interface OfflineWorker {
	/** fetches a newer version in the background; what a new visit would be shown, null while nothing is here whole */
	keep: () => Promise<Offered | null>;
	/** the next page shows it */
	take: () => Promise<void>;
}

/** A browser that is short of room or of rights leaves the exhibit as it is on the network. */
const PATIENCE_ms = 10 * 60_000;

/**
 * Registers the service worker of an export. Null where the browser has none (a page that did not come over https) or where
 * its owner wants to save data.
 */
export async function offlineWorker(address: string): Promise<OfflineWorker | null> {
	const { serviceWorker, connection } = navigator as Navigator & { connection?: { saveData?: boolean } };
	if (!serviceWorker || connection?.saveData) return null;
	try {
		await serviceWorker.register(address);
		const { active } = await serviceWorker.ready;
		return {
			keep: async () => (await ask(serviceWorker.controller ?? active, 'keep')) as Offered | null,
			take: async () => void (await ask(serviceWorker.controller ?? active, 'take')),
		};
	} catch {
		return null;
	}
}

function ask(worker: ServiceWorker | null, wish: 'keep' | 'take'): Promise<unknown> {
	return new Promise((resolve) => {
		const { port1, port2 } = new MessageChannel();
		const timer = setTimeout(() => resolve(null), PATIENCE_ms);
		port1.onmessage = ({ data }) => {
			clearTimeout(timer);
			port1.close();
			resolve(data);
		};
		worker?.postMessage(wish, [port2]);
	});
}
