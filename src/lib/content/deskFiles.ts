import type { Problem } from './problem';

/** Why a file is not opened or written; worded elsewhere under these codes. */
export type FileRefusal =
	/** there is none of that name */
	| 'no-such-file'
	/** a name that no content file has: hidden, leading out of the folder, of another kind, impossible elsewhere */
	| 'not-allowed'
	/** another file has the same name but for capitals */
	| 'case-differs'
	/** not UTF-8, or holds what no text does */
	| 'not-text'
	| 'too-large'
	/** named twice in one save */
	| 'twice'
	/** the content folder itself is not there */
	| 'folder-gone'
	/** of a kept version: its text is no longer kept, or never was (a large scan) */
	| 'not-kept'
	/** there is no such version */
	| 'no-such-version'
	/** the file cannot be read (locked, or no leave to) */
	| 'unreadable';

export interface Refusal {
	code: FileRefusal;
	/** relative to the content folder */
	path: string;
}

/** Line ends of a text; `mixed` where they are not all alike. */
export type LineEnds = '\n' | '\r\n' | 'mixed';

/** A text file opened to be changed. */
export interface OpenFile {
	path: string;
	/** as a field of a page holds it: lines end in LF, no byte order mark */
	text: string;
	/** every sign of the file, for changes to single values */
	exact: string;
	/** SHA-256 of the bytes; a save must name it */
	base: string;
	eol: LineEnds;
	bom: boolean;
}

/** One file of a save. */
export type FileChange = {
	path: string;
	/** SHA-256 of what the change was made from; null where there was no file */
	base: string | null;
} & (
	| {
			/** what the file shall hold; null takes the file away */
			text: string | null;
			/** the text comes from a field of a page: line ends and byte order mark are put back as the file has them */
			typed?: boolean;
	  }
	| {
			/** path of an uploaded file outside the content folder, for scans, recordings and outlines */
			from: string;
	  }
);

export type ChangedBy = 'desk' | 'spreadsheet' | 'marking' | 'outside';

/** What was done, as a code and its values; worded elsewhere. */
export interface WhatWasDone {
	code: string;
	data?: Readonly<Record<string, string | number>>;
}

/** One file of a kept version. */
export interface KeptFile {
	path: string;
	/** SHA-256 of what it held; null where there was none */
	before: string | null;
	after: string | null;
	/** both sides can be read and brought back; false for a large scan */
	kept: boolean;
}

/** One save, or what a text editor did between two. */
export interface KeptVersion {
	id: string;
	/** ISO 8601, UTC */
	time: string;
	by: ChangedBy;
	what: WhatWasDone;
	files: KeptFile[];
	/** of the files that were changed, after the change */
	problems: { errors: number; warnings: number };
}

/** A file that was changed by somebody else since it was opened. */
export interface Clash {
	path: string;
	/** what both started from; null where there was no file, or where it is no longer known */
	started: string | null;
	ours: string | null;
	theirs: string | null;
	/** name this as `base` to write over theirs on purpose */
	theirBase: string | null;
	/** both sets of changes in one text, where they do not touch the same lines; else null */
	merged: string | null;
}

export interface Saved {
	/** null where nothing was different */
	version: string | null;
	/** what the next save of each file must name */
	files: { path: string; base: string | null }[];
	/** of the changed files, after the change */
	problems: Problem[];
	/** those of any file that were not there before */
	fresh: Problem[];
}

export type SaveFailure =
	| { code: 'refused'; path: string; why: FileRefusal }
	/** the change would make errors; `evenIfBroken` saves it all the same */
	| { code: 'has-errors'; problems: Problem[]; fresh: Problem[] }
	| { code: 'changed-underneath'; clashes: Clash[] }
	/** nothing was changed, or all was put back; `reason` is the system's code (ENOSPC, EACCES, EROFS) */
	| { code: 'not-written'; path: string; reason: string };

/** A value that one line of a file can hold; null takes the line away. */
export type FieldValue = string | number | boolean | readonly string[] | null;

/** One value that two versions of a file have not in common. */
export interface ValueChange {
	kind: 'added' | 'removed' | 'changed';
	/** field path; an entry of a list that has an id is known by it: `features[edge].at` */
	path: string;
	/** as a reader would write them; lists with commas */
	from?: string;
	to?: string;
}

export interface TextPart {
	kind: 'same' | 'added' | 'removed';
	text: string;
}

/** A paragraph of a label that is not as it was, word by word. */
export interface ParagraphChange {
	kind: 'added' | 'removed' | 'changed';
	/** which one it is, from 1, in the text that it stands in (the new one where in both) */
	number: number;
	parts: TextPart[];
}

export interface LineChange {
	kind: 'same' | 'added' | 'removed';
	text: string;
	/** line numbers from 1; null where the line is not in that text */
	oldLine: number | null;
	newLine: number | null;
}

/** How two texts of one file differ. */
export interface Difference {
	/** null where one of the texts cannot be read as values: then only the lines tell */
	values: ValueChange[] | null;
	paragraphs: ParagraphChange[];
	/** only notes, order, quotes or line ends differ */
	onlyForm: boolean;
	lines: LineChange[];
}
