import { createHash } from 'node:crypto';
import { join } from 'node:path';
import type { KeptVersion } from '../../content/deskFiles';
import { syncFolder, writeAtomically } from '../writeAtomically';
import { codeOf, type DeskFs } from './deskFs';

/** Bounds on what is kept; the oldest versions go first, a twentieth at a time. */
export interface KeptLimits {
	versions: number;
	/** of all kept texts together */
	bytes: number;
	/** of one scan or recording; a larger one is noted by its hash only */
	dataBytes: number;
}
export const KEPT_LIMITS: KeptLimits = { versions: 5_000, bytes: 200e6, dataBytes: 8e6 };

/** Code of the version that stands for all that is older: the folder as it then was. */
export const OLDEST = 'first-kept';

export interface KeptVersions {
	/** Keeps what a file holds, once; `hurry` leaves the flush to the system. */
	keep(bytes: Uint8Array, hurry?: boolean): Promise<string>;
	/** What was kept under a hash; null where it is not. */
	read(hash: string): Promise<Uint8Array | null>;
	/** Where it is kept. */
	placeOf(hash: string): string;
	/** Writes a version at the end of the list. */
	add(version: KeptVersion): Promise<void>;
	/** Oldest first. */
	all(): Promise<readonly KeptVersion[]>;
	/** What each file held when it was last seen by a version. */
	known(): Promise<ReadonlyMap<string, string>>;
}

const HASH = /^[0-9a-f]{64}$/;
export const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/**
 * Versions in `folder`: `versions.jsonl`, a line each, and `texts/`, what the files held, by hash. A line that a power cut
 * tore off is passed over. When a bound is passed the oldest versions become one, which says what every file then held.
 */
export function keptVersions(folder: string, fs: DeskFs, limits: KeptLimits = KEPT_LIMITS): KeptVersions {
	const list = join(folder, 'versions.jsonl');
	const texts = join(folder, 'texts');
	const place = (hash: string): string => join(texts, hash.slice(0, 2), hash);
	let versions: KeptVersion[] | null = null;
	let known = new Map<string, string>();
	/** bytes by hash */
	let sizes: Map<string, number> | null = null;
	/** the list does not end in a line end */
	let torn = false;

	async function load(): Promise<KeptVersion[]> {
		if (versions) return versions;
		const text = await fs.readFile(list, 'utf8').catch((cause) => {
			if (codeOf(cause) === 'ENOENT') return '';
			throw cause;
		});
		torn = text !== '' && !text.endsWith('\n');
		versions = text.split('\n').flatMap((line) => parse(line) ?? []);
		known = fold(versions);
		return versions;
	}

	async function loadSizes(): Promise<Map<string, number>> {
		if (sizes) return sizes;
		const found = new Map<string, number>();
		for (const part of await fs.readdir(texts).catch(() => [])) {
			for (const name of await fs.readdir(join(texts, part)).catch(() => [])) {
				if (HASH.test(name)) found.set(name, (await fs.stat(place(name))).size);
			}
		}
		sizes = found;
		return found;
	}

	async function trim(): Promise<void> {
		const all = await load();
		const size = await loadSizes();
		const total = (some: Iterable<string>): number => {
			let sum = 0;
			for (const hash of some) sum += size.get(hash) ?? 0;
			return sum;
		};
		if (all.length <= limits.versions && total(size.keys()) <= limits.bytes) return;
		let drop = all.length > limits.versions ? all.length - Math.floor(limits.versions * 0.95) : 0;
		// at least the newest stays, whatever it holds
		for (; drop < all.length - 1; drop += Math.max(1, Math.floor(all.length / 20))) {
			if (total(hashesOf(shortened(all, drop))) <= limits.bytes) break;
		}
		const rest = shortened(all, Math.min(drop, all.length - 1));
		await writeAtomically(list, rest.map((version) => `${JSON.stringify(version)}\n`).join(''), fs);
		versions = rest;
		torn = false;
		const used = hashesOf(rest);
		for (const hash of [...size.keys()]) {
			if (used.has(hash)) continue;
			await fs.rm(place(hash), { force: true });
			size.delete(hash);
		}
	}

	return {
		async keep(bytes, hurry) {
			const hash = hashOf(bytes);
			const size = await loadSizes();
			if (size.has(hash)) return hash;
			if (hurry) {
				await fs.mkdir(join(texts, hash.slice(0, 2)), { recursive: true });
				const file = await fs.open(place(hash), 'w');
				try {
					await file.writeFile(bytes);
				} finally {
					await file.close();
				}
			} else await writeAtomically(place(hash), bytes, fs);
			size.set(hash, bytes.length);
			return hash;
		},
		async read(hash) {
			if (!HASH.test(hash)) return null;
			const bytes = await fs.readFile(place(hash)).catch(() => null);
			// half a text after a power cut is none
			return bytes && hashOf(bytes) === hash ? bytes : null;
		},
		placeOf: place,
		async add(version) {
			const all = await load();
			await fs.mkdir(folder, { recursive: true });
			const file = await fs.open(list, 'a');
			try {
				await file.writeFile(`${torn ? '\n' : ''}${JSON.stringify(version)}\n`);
				await file.sync();
			} catch (cause) {
				torn = true;
				throw cause;
			} finally {
				await file.close();
			}
			await syncFolder(folder, fs);
			torn = false;
			all.push(version);
			for (const { path, after } of version.files) {
				if (after === null) known.delete(path);
				else known.set(path, after);
			}
			// the version stands; a list that is too long can be shortened the next time
			await trim().catch(() => undefined);
		},
		all: load,
		async known() {
			await load();
			return known;
		},
	};
}

function parse(line: string): KeptVersion | null {
	try {
		const found = JSON.parse(line) as KeptVersion;
		return typeof found.id === 'string' && Array.isArray(found.files) ? found : null;
	} catch {
		return null;
	}
}

/** What each file held after these versions. */
export function fold(versions: readonly KeptVersion[]): Map<string, string> {
	const held = new Map<string, string>();
	for (const { files } of versions) {
		for (const { path, after } of files) {
			if (after === null) held.delete(path);
			else held.set(path, after);
		}
	}
	return held;
}

/** The same list with its first `drop` versions, and the one after them, made into one. */
function shortened(all: readonly KeptVersion[], drop: number): KeptVersion[] {
	if (drop === 0) return [...all];
	const last = all[drop];
	const kept = new Map(
		all.slice(0, drop + 1).flatMap(({ files }) => files.map((file) => [file.path, file.kept])),
	);
	const files = [...fold(all.slice(0, drop + 1))].map(([path, hash]) => ({
		path,
		before: hash,
		after: hash,
		kept: kept.get(path) ?? true,
	}));
	return [{ ...last, by: 'outside', what: { code: OLDEST }, files }, ...all.slice(drop + 1)];
}

function hashesOf(versions: readonly KeptVersion[]): Set<string> {
	const used = new Set<string>();
	for (const { files } of versions) {
		for (const { before, after } of files) {
			if (before !== null) used.add(before);
			if (after !== null) used.add(after);
		}
	}
	return used;
}
