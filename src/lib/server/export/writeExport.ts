import { createHash } from 'node:crypto';
import {
	chmod,
	mkdir,
	mkdtemp,
	readdir,
	readFile,
	rename,
	rm,
	stat,
	utimes,
	writeFile,
} from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { KIND, LIST, readExportList, type ExportList } from '../../kiosk/offline/exportList';
import { fail, ok, type Result } from '../../domain/result';

export interface WriteExportOptions {
	/** by path from the export's root */
	files: ReadonlyMap<string, Uint8Array>;
	/** hash of the exhibit, version of the program */
	exhibit: string;
	code: string;
}

export interface Written {
	list: ExportList;
	bytes: number;
	/** files that an earlier export in this folder did not have so */
	changed: number;
	/** files that an earlier export had and this one has not */
	gone: number;
}

const sha256 = (data: Uint8Array | string): string => createHash('sha256').update(data).digest('hex');

/** The list of an export in this folder; null for an empty or missing folder; an error where something else is in it. */
export async function earlierExport(folder: string): Promise<Result<ExportList | null, string>> {
	let names: string[];
	try {
		if (!(await stat(folder)).isDirectory()) return fail(`${folder} is a file, not a folder.`);
		names = await readdir(folder);
	} catch {
		return ok(null);
	}
	if (names.length === 0) return ok(null);
	const list = await readFile(join(folder, LIST), 'utf8').then(readExportList, () => null);
	return list
		? ok(list)
		: fail(
				`${folder} holds other files. Name an empty folder, or one that an earlier export was written to.`,
			);
}

/**
 * Writes an export beside its folder and puts it in its place whole, so that a web server never gives half of one. A file
 * that is as before keeps its date. Nothing is changed where the folder holds something else, or where writing fails.
 */
export async function writeExport(
	outDir: string,
	{ files, exhibit, code }: WriteExportOptions,
): Promise<Result<Written, string>> {
	const folder = resolve(outDir);
	const earlier = await earlierExport(folder);
	if (!earlier.ok) return earlier;
	const listed = [...files].map(([path, data]) => ({ path, bytes: data.length, sha256: sha256(data) }));
	listed.sort((a, b) => (a.path < b.path ? -1 : 1));
	const version = sha256(listed.map((file) => `${file.sha256} ${file.path}`).join('\n')).slice(0, 16);
	const list: ExportList = { kind: KIND, version, exhibit, code, files: listed };
	const before = new Map(earlier.value?.files.map((file) => [file.path, file.sha256]));

	await mkdir(dirname(folder), { recursive: true });
	const fresh = await mkdtemp(join(dirname(folder), `.${basename(folder)}-writing-`));
	const old = `${fresh}-old`;
	try {
		for (const file of listed) {
			const path = join(fresh, file.path);
			await mkdir(dirname(path), { recursive: true });
			await writeFile(path, files.get(file.path) as Uint8Array);
			if (before.get(file.path) !== file.sha256) continue;
			const dates = await stat(join(folder, file.path)).catch(() => null);
			if (dates) await utimes(path, dates.atime, dates.mtime);
		}
		await writeFile(join(fresh, LIST), `${JSON.stringify(list, null, '\t')}\n`);
		// mkdtemp makes a folder that nobody else may read
		await chmod(fresh, 0o755);
		const replaced = await rename(folder, old).then(
			() => true,
			() => false,
		);
		try {
			await rename(fresh, folder);
		} catch (cause) {
			if (replaced) await rename(old, folder);
			throw cause;
		}
	} finally {
		await rm(fresh, { recursive: true, force: true });
		await rm(old, { recursive: true, force: true });
	}
	return ok({
		list,
		bytes: listed.reduce((sum, file) => sum + file.bytes, 0),
		changed: listed.filter((file) => before.get(file.path) !== file.sha256).length,
		gone: [...before.keys()].filter((path) => !files.has(path)).length,
	});
}
