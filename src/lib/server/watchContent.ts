import { watch, type FSWatcher } from 'chokidar';
import { stat } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { isLeftBehind } from './fsReader';
import type { Logger } from './logger';

/** Quiet time after the last event: an editor that saves in two steps has finished by then. */
const QUIET_MS = 60;
/** A file above this is still being copied while its size changes. */
const BIG_BYTES = 1_000_000;
const SIZE_STEADY_MS = 200;
/** How often to look whether the folder itself has gone, come back, or been replaced. */
const FOLDER_LOOK_MS = 1_000;

/**
 * Calls `changed` after anything in a folder has changed and come to rest. The folder may be missing
 * and come later. `polling` is for disks that send no events (network shares). Returns a closer.
 */
export function watchContent(
	folder: string,
	changed: () => void,
	{ polling, logger }: { polling: boolean; logger: Logger },
): () => Promise<void> {
	const root = resolve(folder);
	const touched = new Set<string>();
	let watcher: FSWatcher | null = null;
	let timer: NodeJS.Timeout | null = null;
	let identity: string | null = null;
	let closed = false;

	function wait(): void {
		if (closed) return;
		if (timer) clearTimeout(timer);
		timer = setTimeout(() => void rested(), QUIET_MS);
	}

	async function rested(): Promise<void> {
		const paths = [...touched];
		touched.clear();
		await Promise.all(paths.map(whenSteady));
		if ((await identityOf(root)) === null) identity = null;
		// more came while waiting: its own timer will call
		if (!closed && touched.size === 0) changed();
	}

	function begin(): void {
		watcher = watch(root, {
			ignoreInitial: true,
			usePolling: polling,
			// each look asks for every file: with 500 specimens that is some 2000 questions to a share
			interval: 400,
			binaryInterval: 1_000,
			ignored: (path) => path !== root && isLeftBehind(basename(path)),
		});
		watcher.on('all', (event, path) => {
			// it stops watching then, even where the same folder comes back at once
			if (event === 'unlinkDir' && path === root) identity = null;
			touched.add(path);
			wait();
		});
		watcher.on('error', (cause) => logger.warn(`Watching the content folder: ${String(cause)}`));
	}

	async function look(): Promise<void> {
		const now = await identityOf(root);
		if (closed || now === identity) return;
		identity = now;
		await watcher?.close();
		if (closed) return;
		begin();
		touched.add(root);
		wait();
	}

	begin();
	const first = identityOf(root).then((found) => {
		identity = found;
	});
	const looking = setInterval(() => void first.then(look), FOLDER_LOOK_MS);
	looking.unref();

	return async () => {
		closed = true;
		if (timer) clearTimeout(timer);
		clearInterval(looking);
		await watcher?.close();
	};
}

const identityOf = (path: string): Promise<string | null> =>
	stat(path).then(
		(facts) => `${facts.dev}:${facts.ino}`,
		() => null,
	);

/** Waits until a big file has stopped growing; small ones, folders and vanished files need no wait. */
async function whenSteady(path: string): Promise<void> {
	for (let before = -1; ;) {
		const size = await stat(path).then(
			(facts) => (facts.isFile() ? facts.size : 0),
			() => 0,
		);
		if (size < BIG_BYTES || size === before) return;
		before = size;
		await new Promise((resolve) => setTimeout(resolve, SIZE_STEADY_MS));
	}
}
