import { readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { isShapeHash } from './shapeFiles';

/** How long a shape that nothing uses is kept, in case an edit is taken back. */
export const KEEP_UNUSED_MS = 30 * 24 * 3_600_000;

/**
 * Removes prepared shapes that are not in use and have not been written for a while; `now_ms` is the
 * time since the epoch. Returns how many went. Anything in the folder that is not a shape is left alone.
 */
export async function pruneShapes(
	dataDir: string,
	inUse: ReadonlySet<string>,
	now_ms: number,
): Promise<number> {
	const folder = join(dataDir, 'shapes');
	const names = await readdir(folder).catch(() => []);
	let removed = 0;
	for (const name of names) {
		if (!isShapeHash(name) || inUse.has(name)) continue;
		const path = join(folder, name);
		const facts = await stat(path).catch(() => null);
		if (!facts?.isDirectory() || now_ms - facts.mtimeMs < KEEP_UNUSED_MS) continue;
		await rm(path, { recursive: true, force: true });
		removed++;
	}
	return removed;
}
