import type { CompiledFile } from './compileFile';
import type { ContentFile } from './draft';
import type { FileKind } from './fileKind';
import { finding, type Place } from './finding';
import type { MessageData, MessageId } from './messages';
import type { Problem } from './problem';

export interface KnownFile {
	file: ContentFile;
	kind: FileKind;
	/** absent for files that are looked at by name only */
	compiled?: CompiledFile;
}

/** Everything that was listed and read, with its problems; the ground of the cross-checks. */
export interface ContentFiles {
	byPath: ReadonlyMap<string, KnownFile>;
	problems: Problem[];
	/** paths that a file with a wrong name was meant to have: they are not missed a second time */
	meant: Set<string>;
}

/** Adds a problem to the list. */
export function report<K extends MessageId>(
	files: ContentFiles,
	file: string,
	id: K,
	place: Place,
	path: string,
	data: MessageData<K>,
): void {
	files.problems.push(withFile(finding(id, place, path, data), file));
}

/** A finding in its file, with the fields in the order of the problem list. */
export function withFile(found: ReturnType<typeof finding>, file: string): Problem {
	const { id, severity, line, column, path, data, message, remedy } = found;
	return { id, severity, file, line, column, path, data, message, remedy };
}
