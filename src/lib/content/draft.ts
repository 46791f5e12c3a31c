import type { Exhibit, Specimen } from './exhibit';
import type { Problem } from './problem';

/** A specimen as its files say, before its shape has been worked out. */
export type SpecimenDraft = Omit<Specimen, 'prepared'>;

/** The exhibit as its files say: no hash yet, and no prepared shapes. */
export type ExhibitDraft = Omit<Exhibit, 'hash' | 'specimens'> & { specimens: SpecimenDraft[] };

export interface LoadedContent {
	/** null only when exhibit.yaml, or the first language's words in ui/, cannot be used at all */
	draft: ExhibitDraft | null;
	/** everything that a curator should know, by file, line and column */
	problems: Problem[];
}

export interface ContentFile {
	/** relative to the content folder, forward slashes */
	path: string;
	/** bytes */
	size: number;
	/** changes when the file changes */
	stamp: string;
}

/** How the loader sees the content folder; both may fail, and a failure becomes a problem. */
export interface ContentReader {
	list(): Promise<ContentFile[]>;
	/** text of one file; bytes that are not UTF-8 come as U+FFFD */
	read(path: string): Promise<string>;
}
