import type { Saved, SaveFailure } from './deskFiles';
import type { WordedProblem } from './problem';

/** How a save went, with problems in the page's language. */
export type SaveAnswer =
	| { ok: true; saved: Pick<Saved, 'version' | 'files'> & { problems: WordedProblem[] } }
	| { ok: false; failure: SaveTrouble };

export type SaveTrouble =
	| Exclude<SaveFailure, { code: 'has-errors' }>
	| { code: 'has-errors'; problems: WordedProblem[]; fresh: WordedProblem[] };

/** What the content check says of texts that are not saved. */
export type CheckAnswer =
	/** problems of the files themselves; fresh: of any file, not there before */
	{ ok: true; problems: WordedProblem[]; fresh: WordedProblem[] } | { ok: false; failure: SaveFailure };
