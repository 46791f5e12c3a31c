import { join, relative, sep } from 'node:path';
import { fail, ok, type Result } from '../../domain/result';
import type { FileRefusal } from '../../content/deskFiles';
import { checkContentPath } from './checkContentPath';
import { codeOf, type DeskFs } from './deskFs';

export interface Place {
	/** real path, links followed */
	real: string;
	kind: 'text' | 'data';
	isThere: boolean;
}

/**
 * Where a content file is, or is to be. Refused: names that `checkContentPath` refuses, links that lead out of the folder
 * or into its hidden parts, links to nothing, folders, and names that differ from one that is there in capitals only
 * (on another computer they would be the same file).
 */
export async function placeInside(
	fs: DeskFs,
	contentDir: string,
	path: string,
): Promise<Result<Place, FileRefusal>> {
	const kind = checkContentPath(path);
	if (!kind) return fail('not-allowed');
	const root = await fs.realpath(contentDir).catch(() => null);
	if (root === null || !(await fs.stat(root)).isDirectory()) return fail('folder-gone');
	let at = root;
	const steps = path.split('/');
	for (const [i, step] of steps.entries()) {
		const last = i === steps.length - 1;
		const names = await fs.readdir(at).catch(() => null);
		if (names === null) return fail('not-allowed');
		if (!names.includes(step)) {
			const same = names.find((name) => folded(name) === folded(step));
			if (same !== undefined) return fail('case-differs');
			return ok({ real: join(at, ...steps.slice(i)), kind, isThere: false });
		}
		try {
			at = await fs.realpath(join(at, step));
			if (!isWithin(at, root)) return fail('not-allowed');
			const facts = await fs.lstat(at);
			if (last ? !facts.isFile() : !facts.isDirectory()) return fail('not-allowed');
		} catch (cause) {
			// a link to nothing, or in a circle
			return fail(codeOf(cause) === 'EACCES' ? 'unreadable' : 'not-allowed');
		}
	}
	return ok({ real: at, kind, isThere: true });
}

const folded = (name: string): string => name.normalize('NFC').toLowerCase();

/** Inside the folder, and in none of its hidden parts. */
export function isWithin(real: string, root: string): boolean {
	const steps = relative(root, real).split(sep);
	return steps.every((step) => step !== '' && !step.startsWith('.') && !step.includes(':'));
}
