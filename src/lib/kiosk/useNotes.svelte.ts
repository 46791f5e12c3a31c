import { createContext } from 'svelte';

/** What a room says of itself to whoever counts its use. */
export interface UseNote {
	/** as in its address */
	room: string;
	/** see domain/use/useFacts */
	step?: string;
	/** ids of the specimens that lie there now */
	teeth?: readonly string[];
}

/** The room's own word on what is shown in it; nobody need listen. */
export class UseNotes {
	current = $state.raw<UseNote | null>(null);
	tell(note: UseNote): void {
		this.current = note;
	}
}

export const [getUseNotes, setUseNotes] = createContext<UseNotes>();
