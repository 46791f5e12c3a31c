import type { ScaleMode } from '../stage/api';
import { TablePlace } from './tablePlace.svelte';

/** so many teeth fit beside each other and can still be told apart */
export const MOST_TEETH = 4;
/** so many places always stand, one of them perhaps open */
export const FEWEST_PLACES = 2;

/** Which teeth lie on the table and how they are compared. */
export class Comparison {
	/** left to right; 2 to 4 of them */
	places = $state<TablePlace[]>([]);
	/** place that the next tooth picked from the drawer goes to */
	next = $state(0);
	linked = $state(false);
	scaleMode = $state<ScaleMode>('same-scale');
	/** a place that no one has chosen a tooth for is to be filled by the exhibit */
	#fill: boolean;

	/** `ids` as an address tells them: with fewer than two the exhibit chooses; null = an open place. */
	constructor(ids: readonly (string | null)[]) {
		const once = ids.filter((id, i) => id === null || ids.indexOf(id) === i).slice(0, MOST_TEETH);
		this.#fill = once.length < FEWEST_PLACES;
		while (once.length < FEWEST_PLACES) once.push(null);
		this.places = once.map((id) => new TablePlace(id));
	}

	/** specimen id in each place */
	get ids(): (string | null)[] {
		return this.places.map(({ id }) => id);
	}

	/** Lays a tooth in the place that is next; one that lies there already only hands the turn to the place after it. */
	pick(id: string): void {
		const lies = this.ids.indexOf(id);
		if (lies >= 0) {
			this.next = (lies + 1) % this.places.length;
			return;
		}
		this.places[this.next].lay(id);
		this.next = (this.next + 1) % this.places.length;
	}

	/**
	 * Keeps only teeth that the exhibit still has. `partner` chooses what goes into an empty place, given
	 * the tooth in a place beside it (or null).
	 */
	keepOnly(known: ReadonlySet<string>, partner: (beside: string | null) => string | null): void {
		const fill = this.#fill || this.ids.every((id) => id === null);
		this.#fill = false;
		for (const place of this.places) {
			if (place.id === null ? !fill : known.has(place.id)) continue;
			const beside = this.places.find(({ id }) => id !== null && id !== place.id && known.has(id));
			place.lay(partner(beside?.id ?? null));
		}
	}
}
