/** One thing that a curator should know about a file; `wordProblem` words it in another language. */
export interface Problem {
	/** stable id of the message, e.g. `unknown-key` */
	id: string;
	severity: 'error' | 'warning';
	/** relative to the content folder, forward slashes */
	file: string;
	/** from 1 */
	line: number;
	column: number;
	/** field path, e.g. `shape.model.crown_height_mm`; empty for the whole file */
	path: string;
	/** what the message is about, plain values that JSON can carry; absent where the words are all there is */
	data?: unknown;
	/** what was found and what is expected, one or two plain sentences; English */
	message: string;
	/** what to do, with an example; English */
	remedy: string;
}

/** A problem for a page: its words are in the language `lang`. */
export type WordedProblem = Omit<Problem, 'data'> & { lang: string };
