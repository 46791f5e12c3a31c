import type { ChangedBy, KeptVersion, WhatWasDone } from '../../content/deskFiles';
import { fold } from './keptVersions';

export interface RestoreRequest {
	versionId: string;
	/** only this file; all of `scope` where it is left out */
	path?: string;
	/** hash of what the file holds now, as seen by whoever asks; only with `path` */
	base?: string | null;
	/** as it was after the version (default), or before it, which undoes it */
	side?: 'before' | 'after';
	/** the files of that version (default), or the whole folder as it then was */
	scope?: 'version' | 'folder';
	what: WhatWasDone;
	by?: ChangedBy;
}

/**
 * What each file shall hold, by hash; null = not be there. null instead of the whole where there is no such version, or it
 * has no such file. In the whole folder only files that some version knows are meant.
 */
export function wantedState(
	all: readonly KeptVersion[],
	{ versionId, path, side = 'after', scope = 'version' }: RestoreRequest,
): Map<string, string | null> | null {
	const at = all.findIndex(({ id }) => id === versionId);
	if (at < 0) return null;
	const wanted = new Map<string, string | null>();
	if (scope === 'version') {
		for (const file of all[at].files) wanted.set(file.path, file[side]);
	} else {
		const then = fold(all.slice(0, side === 'after' ? at + 1 : at));
		for (const { files } of all) for (const one of files) wanted.set(one.path, then.get(one.path) ?? null);
		// before the first version there is nothing that could be brought back
		if (side === 'before' && at === 0) for (const one of all[0].files) wanted.set(one.path, one.before);
	}
	if (path === undefined) return wanted;
	return wanted.has(path) ? new Map([[path, wanted.get(path)!]]) : null;
}
