/** Why something asked for at the desk was not done, in words for the person who asked. */
export interface DeskProblem {
	/** stable, for code */
	code: string;
	/** what is the matter, one or two plain sentences */
	message: string;
	/** what to do */
	remedy: string;
}
