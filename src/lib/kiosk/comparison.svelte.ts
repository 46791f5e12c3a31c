import type { ScaleMode } from '../stage/api';

/** Which teeth lie on the table and how they are compared. */
export class Comparison {
	/** specimen id in each place, left to right */
	ids = $state<(string | null)[]>([null, null]);
	/** place that the next tooth picked from the drawer goes to */
	next = $state(0);
	linked = $state(false);
	scaleMode = $state<ScaleMode>('same-scale');

	constructor(ids: readonly (string | null)[]) {
		this.ids = [ids[0] ?? null, ids[1] ?? null];
	}

	/** Lays a tooth in the place that is next; one that lies there already only hands the turn to the other place. */
	pick(id: string): void {
		const lies = this.ids.indexOf(id);
		if (lies >= 0) {
			this.next = 1 - lies;
			return;
		}
		this.ids[this.next] = id;
		this.next = 1 - this.next;
	}

	/**
	 * Keeps only teeth that the exhibit still has. `partner` chooses what goes into an empty place, given
	 * the tooth in the other place (or null).
	 */
	keepOnly(known: ReadonlySet<string>, partner: (beside: string | null) => string | null): void {
		for (let place = 0; place < this.ids.length; place += 1) {
			const id = this.ids[place];
			if (id !== null && known.has(id)) continue;
			const beside = this.ids[1 - place];
			this.ids[place] = partner(beside !== null && known.has(beside) ? beside : null);
		}
	}
}
