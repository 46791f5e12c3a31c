import { readdir, readFile, realpath, stat } from 'node:fs/promises';
import { join, resolve, sep } from 'node:path';
import type { ContentReader } from '../content/draft';

/** Names that editors and systems leave beside a curator's files. common practice, no source */
const LEFT_BEHIND = [
	/^\./, // hidden
	/~$/, // backups
	/^~\$/, // an office program's lock
	/^#.*#$/, // autosaves
	/\.(swp|swo|swx|tmp|temp|bak|orig|part|crdownload|lock)$/i,
	/^4913$/, // an editor's write test
	/^(thumbs\.db|desktop\.ini|__macosx)$/i,
];

/** Whether a file or folder name is something an editor or the system left behind, not content. */
export const isLeftBehind = (name: string): boolean => LEFT_BEHIND.some((pattern) => pattern.test(name));

/**
 * Reads a folder for `loadContent`. Paths are relative with forward slashes, sorted; `stamp` changes
 * whenever a file's time or size does. Hidden files, editors' leavings and links that lead out of the
 * folder are not there. A missing folder is an empty one.
 */
export function fsReader(folder: string): ContentReader {
	const root = resolve(folder);

	async function walk(
		at: string,
		relative: string,
		realRoot: string,
		seen: ReadonlySet<string>,
		found: { path: string; size: number; stamp: string }[],
	): Promise<void> {
		const entries = await readdir(at, { withFileTypes: true }).catch(orNothing);
		if (!entries) return;
		await Promise.all(
			entries.map(async (entry) => {
				if (isLeftBehind(entry.name)) return;
				const path = join(at, entry.name);
				const name = relative === '' ? entry.name : `${relative}/${entry.name}`;
				let isFolder = entry.isDirectory();
				let inside = seen;
				if (entry.isSymbolicLink()) {
					const target = await realpath(path).catch(orNothing);
					if (!target || !isInside(target, realRoot) || seen.has(target)) return;
					isFolder = (await stat(target).catch(orNothing))?.isDirectory() ?? false;
					inside = new Set([...seen, target]);
				}
				if (isFolder) return walk(path, name, realRoot, inside, found);
				const facts = await stat(path).catch(orNothing);
				if (facts?.isFile()) {
					found.push({ path: name, size: facts.size, stamp: `${facts.mtimeMs}-${facts.size}` });
				}
			}),
		);
	}

	return {
		async list() {
			const realRoot = await realpath(root).catch(orNothing);
			if (!realRoot) return [];
			const found: { path: string; size: number; stamp: string }[] = [];
			await walk(root, '', realRoot, new Set([realRoot]), found);
			return found.sort((a, b) => (a.path < b.path ? -1 : 1));
		},
		async read(path) {
			return new TextDecoder().decode(await readFile(await pathInside(root, path)));
		},
	};
}

/**
 * The real path of a file inside a folder. Throws where the file is missing or where `path` (with
 * `..`, absolute, or through a link) would lead out of the folder.
 */
export async function pathInside(folder: string, path: string): Promise<string> {
	const realRoot = await realpath(resolve(folder));
	const target = await realpath(resolve(realRoot, path));
	if (!isInside(target, realRoot)) throw new RangeError(`pathInside: ${path} leads out of the folder`);
	return target;
}

const isInside = (path: string, root: string): boolean =>
	path === root || path.startsWith(root.endsWith(sep) ? root : root + sep);

/** Files vanish while a folder is being read: that is nothing, any other failure is thrown on. */
function orNothing(cause: NodeJS.ErrnoException): null {
	if (
		cause.code === 'ENOENT' ||
		cause.code === 'ENOTDIR' ||
		cause.code === 'ELOOP' ||
		cause.code === 'EACCES'
	) {
		return null;
	}
	throw cause;
}
