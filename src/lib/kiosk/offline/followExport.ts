import type { Offered } from './offlineExhibit';

export interface FollowTools {
	/** what this page shows */
	shown: () => Offered | null;
	/** what the files on the network say now; null while they cannot be reached */
	list: () => Promise<Offered | null>;
	/** the service worker; null where there is none */
	worker: () => Promise<{ keep: () => Promise<Offered | null> } | null>;
	/** another version can be had by opening the page anew, or no longer */
	onNewer: (newer: boolean) => void;
}

const EVERY_ms = 60_000;

/**
 * Looks once a minute whether the files of an export have changed. Where a service worker keeps them, a change counts only
 * once the new version is here whole. Returns how to stop.
 */
export function followExport({ shown, list, worker, onNewer }: FollowTools): () => void {
	let stopped = false;
	let busy = false;
	const keeper = worker();
	const look = async () => {
		if (busy || stopped) return;
		busy = true;
		const kept = await keeper;
		const there = await (kept ? kept.keep() : list()).catch(() => null);
		busy = false;
		const here = shown();
		if (!stopped && there && here) onNewer(there.exhibit !== here.exhibit || there.code !== here.code);
	};
	void look();
	const again = () => void look();
	const timer = setInterval(again, EVERY_ms);
	// the network is back
	window.addEventListener('online', again);
	return () => {
		stopped = true;
		window.removeEventListener('online', again);
		clearInterval(timer);
	};
}
