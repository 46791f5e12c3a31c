/** Why a table, or a row of it, cannot be taken; worded for each language under `desk_table_why_<code>`. */
export interface TableProblem {
	code:
		| 'too-large'
		| 'workbook'
		| 'quotes'
		| 'empty'
		| 'no-key-column'
		| 'no-key'
		| 'bad-id'
		| 'row-twice'
		| 'formula'
		| 'line-break'
		| 'not-text'
		| 'not-a-number'
		| 'which-separator'
		| 'not-a-choice'
		| 'cannot-be-emptied'
		| 'needs'
		| 'not-editable'
		| 'check';
	/** line of the table, from 1 */
	line?: number;
	/** name of the column */
	column?: string;
	/** what the cell holds */
	found?: string;
	/** what may stand there */
	choices?: string;
	/** the content check's own words */
	message?: string;
}

/** A cell's value; null takes it away. */
export type CellValue = string | number | string[] | null;

export interface FieldChange {
	column: string;
	/** as written in a table; empty where there was none */
	from: string;
	to: string;
}

export interface ReportRow {
	line: number;
	/** folder of the specimen; empty where the row does not tell */
	id: string;
	accession: string;
	outcome: 'new' | 'changed' | 'unchanged' | 'refused';
	changes: FieldChange[];
	why?: TableProblem;
	/** what the content check warns of that it did not before, in its own words */
	notes: string[];
}

export interface MappedColumn {
	/** as in the table */
	header: string;
	/** key of the column that it fills; null where it is left out */
	column: string | null;
	/** what the numbers are multiplied by to be millimetres */
	factor?: number;
	/** why it is left out */
	leftOut?: 'unknown' | 'no-unit' | 'twice' | 'chosen';
	/** first cells, for a preview */
	sample: string[];
}

/** A file to be written. */
export interface FileEdit {
	/** relative to the content folder */
	path: string;
	/** the text it had; null where there was no file */
	before: string | null;
	after: string;
}

export interface ImportPlan {
	columns: MappedColumn[];
	rows: ReportRow[];
	edits: FileEdit[];
	/** over everything that would be written and what stands there now */
	hash: string;
}

/** What the desk is answered. */
export interface ImportAnswer extends Omit<ImportPlan, 'edits'> {
	/** how many files would be written */
	files: number;
	/** how many were */
	written?: number;
}

export type ImportFailure = TableProblem | { code: 'changed-meanwhile' | 'not-written'; written: number };
