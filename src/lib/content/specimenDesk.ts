import type { FileChange } from './deskFiles';
import type { LabelCounts } from './labelCounts';
import type { WordedProblem } from './problem';
import type { SpecimenView } from './view';

/** Short lines and text of a label, as a person types them. */
export interface LabelFields {
	title: string;
	short: string;
	alt: string;
	text: string;
	/** name of each marked place by its id */
	features: Record<string, string>;
}

/** Facts of specimen.yaml that the desk changes in fields; empty = not there. */
export interface FactFields {
	accession: string;
	group: string;
	part: string;
	preservation: string;
	bed: string;
	by: string;
	certainty: string;
	licence: string;
	rightsHolder: string;
	sources: string[];
	status: string;
	/** YYYY-MM-DD */
	from: string;
	until: string;
}

/** A file as it was when the page read it. */
export interface DeskFile {
	path: string;
	/** SHA-256; null where there is none */
	base: string | null;
	/** every sign of it; null where there is none */
	exact: string | null;
}

/** What was typed: only what differs from the files. */
export interface SpecimenEdits {
	facts?: Partial<FactFields>;
	/** by language */
	labels?: Record<string, Partial<LabelFields>>;
}

/** What the page asks while one types. */
export interface TryRequest {
	/** language of the view */
	lang: string;
	/** the facts' file, then the labels' */
	files: DeskFile[];
	edits: SpecimenEdits;
}

/** What the files would be, and what would then be seen. */
export interface TryAnswer {
	/** for a save */
	changes: FileChange[];
	/** of this specimen's files, as if saved */
	problems: WordedProblem[];
	/** as the room would show it; null where its files have errors */
	view: SpecimenView | null;
	/** by language */
	counts: Record<string, LabelCounts>;
	/** path of a file that is written in a way that cannot be changed in fields */
	notEditable: string | null;
}
