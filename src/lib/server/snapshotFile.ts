import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { ContentFile } from '../content/draft';
import type { Exhibit } from '../content/exhibit';
import { exhibitHash } from './composeExhibit';
import { PREPARER_VERSION } from './prepare/preparerVersion';
import { sha256 } from './shapeHash';
import { readPrepared } from './shapeKeeper';
import { writeAtomically } from './writeAtomically';

/**
 * The first part is raised when the Exhibit type changes; the second follows the preparer, whose facts
 * stand in it. A snapshot of another version is not used.
 */
export const SNAPSHOT_VERSION = `3.${PREPARER_VERSION}`;

const snapshotPath = (dataDir: string): string => join(dataDir, 'snapshot.json');

export interface Snapshot {
	exhibit: Exhibit;
	/** what the content folder looked like when this was made: see `listingHash` */
	listing: string;
}

/** Changes when any file of a folder does. */
export const listingHash = (files: readonly ContentFile[]): string =>
	sha256(files.map(({ path, stamp }) => `${path}\0${stamp}`).join('\n'));

/** Keeps an exhibit as the last good one. */
export async function writeSnapshot(dataDir: string, { exhibit, listing }: Snapshot): Promise<void> {
	const text = JSON.stringify({ version: SNAPSHOT_VERSION, listing, exhibit });
	await writeAtomically(snapshotPath(dataDir), text);
}

/**
 * The last good exhibit, without the specimens whose prepared files are gone; null where there is
 * none, or where the file is of another version or damaged (its hash does not fit).
 */
export async function readSnapshot(dataDir: string): Promise<Snapshot | null> {
	let exhibit: Exhibit;
	let listing: string;
	try {
		const stored = JSON.parse(await readFile(snapshotPath(dataDir), 'utf8')) as Snapshot & {
			version: string;
		};
		if (stored.version !== SNAPSHOT_VERSION) return null;
		({ exhibit, listing } = stored);
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
	if (kept.every(Boolean)) return { exhibit, listing };
	const rest = { ...exhibit, specimens: exhibit.specimens.filter((_, i) => kept[i]) };
	return { exhibit: { ...rest, hash: exhibitHash(rest) }, listing: '' };
}
