import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Exhibit } from '../content/exhibit';
import { exhibitHash } from './composeExhibit';
import { readPrepared } from './shapeKeeper';
import { writeAtomically } from './writeAtomically';

/** Raised when the Exhibit type changes, so that an old snapshot is not taken for a new one. */
const SNAPSHOT_VERSION = 1;

const snapshotPath = (dataDir: string): string => join(dataDir, 'snapshot.json');

/** Keeps an exhibit as the last good one. */
export async function writeSnapshot(dataDir: string, exhibit: Exhibit): Promise<void> {
	await writeAtomically(snapshotPath(dataDir), JSON.stringify({ version: SNAPSHOT_VERSION, exhibit }));
}

/**
 * The last good exhibit, without the specimens whose prepared files are gone; null where there is
 * none, or where the file is of another version or damaged (its hash does not fit).
 */
export async function readSnapshot(dataDir: string): Promise<Exhibit | null> {
	let exhibit: Exhibit;
	try {
		const stored = JSON.parse(await readFile(snapshotPath(dataDir), 'utf8')) as {
			version: number;
			exhibit: Exhibit;
		};
		if (stored.version !== SNAPSHOT_VERSION) return null;
		exhibit = stored.exhibit;
		if (exhibitHash(exhibit) !== exhibit.hash) return null;
	} catch {
		return null;
	}
	const present = new Map<string, Promise<boolean>>();
	const hasFiles = ({ prepared, preservation }: Exhibit['specimens'][number]): Promise<boolean> => {
		const key = `${prepared.hash}-${preservation}`;
		let found = present.get(key);
		if (!found) {
			found = readPrepared(dataDir, prepared.hash, preservation).then((shape) => shape !== null);
			present.set(key, found);
		}
		return found;
	};
	const kept = await Promise.all(exhibit.specimens.map(hasFiles));
	if (kept.every(Boolean)) return exhibit;
	const rest = { ...exhibit, specimens: exhibit.specimens.filter((_, i) => kept[i]) };
	return { ...rest, hash: exhibitHash(rest) };
}
