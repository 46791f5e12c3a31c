import { lstat, realpath } from 'node:fs/promises';
import { join } from 'node:path';
import { fail, ok, type Result } from '../../domain/result';
import { pathInside } from '../fsReader';
import { writeAtomically } from '../writeAtomically';
import { readExactly } from './specimenFiles';
import type { FileEdit } from '../../content/tableImport';

/** One import at a time. */
let turn: Promise<unknown> = Promise.resolve();

/**
 * Writes what was planned, each file whole or not at all. Nothing is written where any of the files no longer holds the
 * text that the plan was made from. `written` counts what was, should the disk fail half way.
 */
export function applyImport(
	contentDir: string,
	edits: readonly FileEdit[],
): Promise<Result<{ written: number }, { code: 'changed-meanwhile' | 'not-written'; written: number }>> {
	const applied = turn.then(() => apply(contentDir, edits));
	turn = applied.catch(() => undefined);
	return applied;
}

async function apply(
	contentDir: string,
	edits: readonly FileEdit[],
): Promise<Result<{ written: number }, { code: 'changed-meanwhile' | 'not-written'; written: number }>> {
	for (const { path, before } of edits) {
		const same =
			before === null ? await isFree(contentDir, path) : (await readExactly(contentDir, path)) === before;
		if (!same) return fail({ code: 'changed-meanwhile', written: 0 });
	}
	let written = 0;
	for (const { path, after } of edits) {
		try {
			await writeAtomically(await placeFor(contentDir, path), after);
			written++;
		} catch {
			return fail({ code: 'not-written', written });
		}
	}
	return ok({ written });
}

async function isFree(contentDir: string, path: string): Promise<boolean> {
	try {
		await lstat(join(contentDir, path));
		return false;
	} catch (cause) {
		return (cause as NodeJS.ErrnoException).code === 'ENOENT';
	}
}

/** Where a file is, or is to be: never outside the folder, whatever links there are. */
async function placeFor(contentDir: string, path: string): Promise<string> {
	try {
		return await pathInside(contentDir, path);
	} catch (cause) {
		if ((cause as NodeJS.ErrnoException).code !== 'ENOENT') throw cause;
	}
	const steps = path.split('/');
	for (let n = steps.length - 1; n > 0; n--) {
		const folder = steps.slice(0, n).join('/');
		try {
			return join(await pathInside(contentDir, folder), ...steps.slice(n));
		} catch (cause) {
			if ((cause as NodeJS.ErrnoException).code !== 'ENOENT') throw cause;
		}
	}
	return join(await realpath(contentDir), ...steps);
}
