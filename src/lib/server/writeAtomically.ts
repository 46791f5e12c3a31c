import { randomBytes } from 'node:crypto';
import * as nodeFs from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/** What writing asks of the file system; an argument, so that a full disk can be tried. */
export type WritingFs = Pick<typeof nodeFs, 'mkdir' | 'open' | 'rename' | 'rm' | 'stat'>;

/**
 * Writes a file so that a reader, or a power cut, finds either the old or the new version, never
 * half of one: a temporary file in the same folder, flushed, renamed over the old one, and the
 * folder's entry flushed too. Makes the folder where it is missing; keeps who may read and write the file,
 * or with `mode` (0o600: its owner alone) says so.
 * Leaves no temporary file behind when writing fails; a killed process may leave one, whose name begins
 * with a dot and ends in `.tmp`.
 */
export async function writeAtomically(
	path: string,
	data: string | Uint8Array,
	fs: WritingFs = nodeFs,
	mode?: number,
): Promise<void> {
	const temporary = await stageFile(path, data, fs, mode);
	try {
		await fs.rename(temporary, path);
	} catch (cause) {
		await fs.rm(temporary, { force: true }).catch(() => undefined);
		throw cause;
	}
	await syncFolder(dirname(path), fs);
}

/** Name of a temporary file beside another; it tells which process made it. */
export const temporaryName = (path: string): string =>
	join(dirname(path), `.${basename(path)}.${process.pid}.${randomBytes(6).toString('hex')}.tmp`);

/**
 * The first half of writing a file: a flushed temporary file beside it with what it shall hold, and with its mode. The
 * name of that file comes back; renaming it is left to the caller. On failure nothing stays behind.
 */
export async function stageFile(
	path: string,
	data: string | Uint8Array,
	fs: WritingFs = nodeFs,
	asked?: number,
): Promise<string> {
	await fs.mkdir(dirname(path), { recursive: true });
	const temporary = temporaryName(path);
	const mode =
		asked ??
		(await fs.stat(path).then(
			(facts) => facts.mode & 0o7777,
			() => undefined,
		));
	try {
		const file = await fs.open(temporary, 'wx', asked);
		try {
			await file.writeFile(data);
			// a share that knows no modes is no reason to fail
			if (mode !== undefined) await file.chmod(mode).catch(() => undefined);
			await file.sync();
		} finally {
			await file.close();
		}
	} catch (cause) {
		await fs.rm(temporary, { force: true }).catch(() => undefined);
		throw cause;
	}
	return temporary;
}

/** Flushes a folder's entries; some systems cannot, which is no reason to fail. */
export async function syncFolder(folder: string, fs: Pick<WritingFs, 'open'> = nodeFs): Promise<void> {
	try {
		const handle = await fs.open(folder, 'r');
		try {
			await handle.sync();
		} finally {
			await handle.close();
		}
	} catch (cause) {
		const code = (cause as NodeJS.ErrnoException).code;
		if (code !== 'EPERM' && code !== 'EISDIR' && code !== 'EINVAL' && code !== 'EACCES') throw cause;
	}
}
