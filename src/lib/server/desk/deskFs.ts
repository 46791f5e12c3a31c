import * as fs from 'node:fs/promises';

/** What the desk asks of the file system; an argument, so that a full disk can be tried. */
export type DeskFs = Pick<
	typeof fs,
	| 'open'
	| 'rename'
	| 'rm'
	| 'rmdir'
	| 'mkdir'
	| 'readFile'
	| 'lstat'
	| 'stat'
	| 'realpath'
	| 'readdir'
	| 'copyFile'
>;

export const realFs: DeskFs = fs;

/** The system's code of a failure. */
export const codeOf = (cause: unknown): string =>
	(cause as NodeJS.ErrnoException | undefined)?.code ?? (cause instanceof Error ? cause.name : 'unknown');
