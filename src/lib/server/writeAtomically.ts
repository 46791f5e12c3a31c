import { randomBytes } from 'node:crypto';
import { mkdir, open, rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/**
 * Writes a file so that a reader, or a power cut, finds either the old or the new version, never
 * half of one: a temporary file in the same folder, flushed, renamed over the old one, and the
 * folder's entry flushed too. Makes the folder where it is missing. Leaves no temporary file behind
 * when writing fails; a killed process may leave one, whose name begins with a dot and ends in `.tmp`.
 */
export async function writeAtomically(path: string, data: string | Uint8Array): Promise<void> {
	const folder = dirname(path);
	await mkdir(folder, { recursive: true });
	const temporary = join(folder, `.${basename(path)}.${process.pid}.${randomBytes(6).toString('hex')}.tmp`);
	try {
		const file = await open(temporary, 'wx');
		try {
			await file.writeFile(data);
			await file.sync();
		} finally {
			await file.close();
		}
		await rename(temporary, path);
	} catch (cause) {
		await rm(temporary, { force: true });
		throw cause;
	}
	await syncFolder(folder);
}

/** Flushes a folder's entries; some systems cannot, which is no reason to fail. */
async function syncFolder(folder: string): Promise<void> {
	try {
		const handle = await open(folder, 'r');
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
