import { createContext } from 'svelte';
import type { CitationView } from '../../content/view';

/** What stands behind a number. */
export interface NumberNote {
	title: string;
	/** the number as shown, with its unit */
	shown: string;
	/** how it comes about, in words */
	how: string;
	/** what goes into it */
	inputs: { name: string; shown: string; citation: CitationView | null; recalled: boolean }[];
	citations: CitationView[];
	/** where the model ends */
	caveats: string[];
}

/** The one panel that shows what stands behind a number. */
export class NoteDesk {
	open = $state.raw<NumberNote | null>(null);
}

export const [getNoteDesk, setNoteDesk] = createContext<NoteDesk>();
