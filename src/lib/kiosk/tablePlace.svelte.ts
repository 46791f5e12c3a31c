import type { StageView } from '../stage/api';

let made = 0;

/** One place on the table: the tooth that lies there and what is shown of it. */
export class TablePlace {
	/** stays with the place for its life, also when places before it go */
	readonly key = (made += 1);
	/** specimen id; null = open, a tooth may be chosen */
	id = $state<string | null>(null);
	/** what the words beside the tooth tell of */
	card = $state<'tooth' | 'animal'>('tooth');
	/** id of the marked feature pointed out */
	feature = $state<string | null>(null);
	/** the tooth has been drawn once */
	drawn = $state(false);
	/** id of the specimen whose shape stands in the view now */
	shown = $state<string | null>(null);
	/** the view in which it turns; null until the stage stands */
	view = $state.raw<StageView | null>(null);

	constructor(id: string | null) {
		this.id = id;
	}

	/** Lays a tooth here, or none. */
	lay(id: string | null): void {
		this.id = id;
		this.feature = null;
	}
}
