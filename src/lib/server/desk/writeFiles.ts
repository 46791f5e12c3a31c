import { dirname, join } from 'node:path';
import type { KeptVersion } from '../../content/deskFiles';
import { fail, ok, type Result } from '../../domain/result';
import { sha256OfFile } from '../shapeHash';
import { stageFile, syncFolder, temporaryName, writeAtomically } from '../writeAtomically';
import { codeOf, type DeskFs } from './deskFs';
import { hashOf, type KeptVersions } from './keptVersions';

/** One file to be written, its place already known to be inside the folder. */
export interface PlacedChange {
	/** relative to the content folder */
	path: string;
	real: string;
	/** hash of what it holds now; null where there is none */
	before: string | null;
	/** null takes it away */
	after: string | null;
	/** what it shall hold: bytes, or a file to be copied */
	content: Uint8Array | { from: string } | null;
}

/** Named points of a save, in order; `renamed` comes after each file. */
export type SavePoint = 'kept' | 'staged' | 'journal' | 'renamed' | 'listed' | 'done';

export interface WritingContext {
	fs: DeskFs;
	kept: KeptVersions;
	/** where the journal lies */
	folder: string;
	/** called at each point; a test stops there */
	at?: (point: SavePoint) => Promise<void> | void;
}

interface Journal {
	version: KeptVersion;
	files: {
		path: string;
		real: string;
		temporary: string | null;
		before: string | null;
		after: string | null;
	}[];
}

export type WriteFailure =
	{ code: 'changed'; path: string } | { code: 'not-written'; path: string; reason: string };

const journalPath = (folder: string): string => join(folder, 'journal.json');

/** Hash of what a file holds; null where there is none. */
export async function hashOfFile(fs: DeskFs, real: string): Promise<string | null> {
	try {
		const { size } = await fs.stat(real);
		return size > 4e6 ? await sha256OfFile(real) : hashOf(await fs.readFile(real));
	} catch (cause) {
		if (codeOf(cause) === 'ENOENT' || codeOf(cause) === 'ENOTDIR') return null;
		throw cause;
	}
}

/**
 * Writes files and the version that tells of them: all or none, whenever the process or the power ends.
 * All new texts are flushed beside the old ones first; then a journal says what is to be renamed; then they are renamed.
 * Before the journal stands nothing has changed; once it stands `finishWriting` completes what is left. What fails in
 * between is put back. Nothing is written over that no longer holds `before`.
 */
export async function writeFiles(
	context: WritingContext,
	changes: readonly PlacedChange[],
	version: KeptVersion,
): Promise<Result<null, WriteFailure>> {
	const { fs, kept, folder } = context;
	const at = async (point: SavePoint): Promise<void> => context.at?.(point);
	const journal: Journal = { version, files: [] };
	let current = changes[0].path;
	try {
		await at('kept');
		for (const change of changes) {
			current = change.path;
			const { path, real, before, after, content } = change;
			const temporary = content === null ? null : await stage(fs, real, content);
			journal.files.push({ path, real, temporary, before, after });
		}
		await at('staged');
		for (const { path, real, before } of changes) {
			current = path;
			if ((await hashOfFile(fs, real)) === before) continue;
			await clear(fs, journal);
			return fail({ code: 'changed', path });
		}
		await writeAtomically(journalPath(folder), JSON.stringify(journal), fs);
	} catch (cause) {
		await clear(fs, journal);
		return fail({ code: 'not-written', path: current, reason: codeOf(cause) });
	}
	await at('journal');
	const done: Journal['files'] = [];
	try {
		for (const file of journal.files) {
			current = file.path;
			await put(fs, file);
			done.push(file);
			await at('renamed');
		}
		for (const real of new Set(journal.files.map((file) => dirname(file.real))))
			await syncFolder(real, fs).catch(orGone);
		await kept.add(version);
	} catch (cause) {
		// what cannot be put back now is completed or told of at the next start
		const back = await putBack(context, done).catch(() => false);
		if (back) {
			await clear(fs, journal);
			await fs.rm(journalPath(folder), { force: true }).catch(() => undefined);
		}
		return fail({ code: 'not-written', path: current, reason: codeOf(cause) });
	}
	await at('listed');
	await fs.rm(journalPath(folder), { force: true }).catch(() => undefined);
	await at('done');
	return ok(null);
}

/**
 * Completes a save that was cut off: run it before anything else is read or written. A file that has been changed by
 * somebody else since is left as it is. The paths left alone come back; null where there was nothing to complete.
 */
export async function finishWriting(context: WritingContext): Promise<{ left: string[] } | null> {
	const { fs, kept, folder } = context;
	let journal: Journal;
	try {
		journal = JSON.parse(await fs.readFile(journalPath(folder), 'utf8')) as Journal;
	} catch (cause) {
		if (codeOf(cause) === 'ENOENT') return null;
		throw cause;
	}
	const left: string[] = [];
	for (const file of journal.files) {
		const now = await hashOfFile(fs, file.real);
		if (now === file.after) {
			if (file.temporary) await fs.rm(file.temporary, { force: true });
		} else if (now !== file.before) {
			left.push(file.path);
			if (file.temporary) await fs.rm(file.temporary, { force: true });
		} else if (file.temporary && (await hashOfFile(fs, file.temporary)) !== file.after) {
			const bytes = await kept.read(file.after!);
			if (bytes) await writeAtomically(file.real, bytes, fs);
			else left.push(file.path);
		} else await put(fs, file);
	}
	for (const real of new Set(journal.files.map((file) => dirname(file.real))))
		await syncFolder(real, fs).catch(orGone);
	const { version } = journal;
	if (!(await kept.all()).some(({ id }) => id === version.id)) {
		const files = version.files.filter(({ path }) => !left.includes(path));
		if (files.length > 0) await kept.add({ ...version, files });
	}
	await fs.rm(journalPath(folder), { force: true });
	return { left };
}

async function stage(fs: DeskFs, real: string, content: Uint8Array | { from: string }): Promise<string> {
	if (content instanceof Uint8Array) return stageFile(real, content, fs);
	await fs.mkdir(dirname(real), { recursive: true });
	const temporary = temporaryName(real);
	try {
		await fs.copyFile(content.from, temporary);
		const file = await fs.open(temporary, 'r+');
		try {
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

async function put(fs: DeskFs, { real, temporary }: Journal['files'][number]): Promise<void> {
	if (temporary) return fs.rename(temporary, real);
	await fs.rm(real, { force: true });
	// a specimen's folder that holds nothing more goes with its last file
	await fs.rmdir(dirname(real)).catch(() => undefined);
}

/** Puts files back as they were; false where one could not be. */
async function putBack({ fs, kept }: WritingContext, files: Journal['files']): Promise<boolean> {
	for (const { real, before } of [...files].reverse()) {
		if (before === null) await fs.rm(real, { force: true });
		else {
			const bytes = await kept.read(before);
			if (!bytes) return false;
			await writeAtomically(real, bytes, fs);
		}
	}
	return true;
}

/** Takes temporary files away, and the folders that were made for them. */
async function clear(fs: DeskFs, { files }: Journal): Promise<void> {
	for (const { temporary, real, before } of files) {
		if (temporary) await fs.rm(temporary, { force: true }).catch(() => undefined);
		if (before === null) await fs.rmdir(dirname(real)).catch(() => undefined);
	}
}

function orGone(cause: unknown): void {
	if (codeOf(cause) !== 'ENOENT') throw cause;
}
