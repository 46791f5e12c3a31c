import type { ScaleMode } from '../stage/api';
import { TablePlace } from './tablePlace.svelte';

/** so many teeth fit beside each other and can still be told apart */
export const MOST_TEETH = 4;
/** so many places always stand, one of them perhaps open */
export const FEWEST_PLACES = 2;

/** What was done last, for those who cannot see it; `went` = the tooth that had to make room. */
export type TableEvent =
	| { kind: 'laid'; place: number; id: string; went: string | null }
	| { kind: 'taken'; place: number; id: string }
	| { kind: 'opened'; place: number }
	| { kind: 'moved'; place: number; id: string };

/** Which teeth lie on the table and how they are compared. Places are counted from 0, left to right. */
export class Comparison {
	/** 2 to 4 of them; at most one is open (holds no tooth), unless none holds one */
	places = $state<TablePlace[]>([]);
	/** place that the next tooth picked from the drawer goes to */
	next = $state(0);
	linked = $state(false);
	scaleMode = $state<ScaleMode>('same-scale');
	event = $state.raw<TableEvent | null>(null);
	/** keys of the two places whose teeth were last chosen to be told apart, the earlier choice first */
	#pairKeys = $state<[number, number] | null>(null);
	/** a place that no one has chosen a tooth for is to be filled by the exhibit */
	#fill: boolean;

	/** `ids` as an address tells them: with fewer than two the exhibit chooses; null = an open place. */
	constructor(ids: readonly (string | null)[]) {
		const once = ids.filter((id, i) => ids.indexOf(id) === i).slice(0, MOST_TEETH);
		this.#fill = ids.length < FEWEST_PLACES || once.every((id) => id === null);
		while (once.length < FEWEST_PLACES) once.push(null);
		this.places = once.map((id) => new TablePlace(id));
		this.#turn(-1);
	}

	/** specimen id in each place */
	get ids(): (string | null)[] {
		return this.places.map(({ id }) => id);
	}

	/** how many teeth lie there */
	get count(): number {
		return this.ids.filter((id) => id !== null).length;
	}

	/** there is room for one more place */
	get roomy(): boolean {
		return this.places.length < MOST_TEETH && this.count === this.places.length;
	}

	/** The two places whose teeth are told apart, left to right; null with fewer than two teeth. */
	get pair(): [number, number] | null {
		const lying = this.places.flatMap(({ id }, place) => (id === null ? [] : [place]));
		if (lying.length < 2) return null;
		const chosen = lying.filter((place) => this.#pairKeys?.includes(this.places[place].key));
		const rest = lying.filter((place) => !chosen.includes(place));
		const [a, b] = [...chosen, ...rest].slice(0, 2);
		return a < b ? [a, b] : [b, a];
	}

	/** Tells this tooth apart from the one that was chosen last. */
	tellApart(place: number): void {
		const now = this.pair;
		if (!now || now.includes(place) || !this.places[place]?.id) return;
		const keys = now.map((index) => this.places[index].key);
		const last = this.#pairKeys?.[1];
		this.#pairKeys = [last !== undefined && keys.includes(last) ? last : keys[1], this.places[place].key];
	}

	/** Lays a tooth in the place that is next; one that lies there already only hands the turn to the place after it. */
	pick(id: string): void {
		const lies = this.ids.indexOf(id);
		if (lies >= 0) this.#turn(lies);
		else this.#lay(id, this.next);
	}

	/** Lays a tooth in a place; one that lies in another place changes places with it. */
	layAt(id: string, place: number): void {
		const lies = this.ids.indexOf(id);
		if (!this.places[place] || lies === place) return;
		if (lies < 0) return this.#lay(id, place);
		const moved = this.places[lies];
		this.places[lies] = this.places[place];
		this.places[place] = moved;
		this.event = { kind: 'moved', place, id };
		this.#turn(place);
	}

	/** Lays a tooth in an open place, or in one more; on a full table, in the place that is next. */
	add(id: string): void {
		if (this.ids.includes(id)) return;
		const open = this.ids.indexOf(null);
		if (open >= 0) return this.#lay(id, open);
		if (!this.roomy) return this.#lay(id, this.next);
		this.places.push(new TablePlace(null));
		this.#lay(id, this.places.length - 1);
	}

	/** One more place, open; the next tooth goes there. */
	open(): void {
		if (this.roomy) this.places.push(new TablePlace(null));
		const open = this.ids.indexOf(null);
		if (open < 0) return;
		this.next = open;
		this.event = { kind: 'opened', place: open };
	}

	/** The next tooth goes to this place. */
	choose(place: number): void {
		if (this.places[place]) this.next = place;
	}

	/** A tooth can be taken away, or an open place closed; the last tooth stays. */
	canTake(place: number): boolean {
		const id = this.places[place]?.id;
		if (id === undefined) return false;
		return id === null ? this.places.length > FEWEST_PLACES : this.count > 1;
	}

	/** Puts a tooth back into the drawer. With more than two places its place goes too, else it stays open. */
	take(place: number): void {
		if (!this.canTake(place)) return;
		const { id } = this.places[place];
		if (this.places.length > FEWEST_PLACES) {
			this.places.splice(place, 1);
			if (this.next > place || this.next >= this.places.length) this.next = Math.max(0, this.next - 1);
		} else {
			this.places[place].lay(null);
		}
		const open = this.ids.indexOf(null);
		if (open >= 0) this.next = open;
		if (id !== null) this.event = { kind: 'taken', place, id };
	}

	/**
	 * Keeps only teeth that the exhibit still has. `partner` chooses what goes into an empty place, given
	 * the tooth in a place beside it (or null). Beyond two places, a place whose tooth is gone goes too.
	 */
	keepOnly(known: ReadonlySet<string>, partner: (beside: string | null) => string | null): void {
		const fill = this.#fill || this.ids.every((id) => id === null);
		this.#fill = false;
		const gone = (place: TablePlace) => (place.id === null ? fill : !known.has(place.id));
		for (let i = this.places.length - 1; i >= 0 && this.places.length > FEWEST_PLACES; i -= 1)
			if (gone(this.places[i])) this.places.splice(i, 1);
		for (const place of this.places) {
			if (!gone(place)) continue;
			const beside = this.places.find((other) => other !== place && other.id !== null && known.has(other.id));
			const id = partner(beside?.id ?? null);
			if (id !== place.id) place.lay(id);
		}
		if (this.next >= this.places.length) this.next = 0;
	}

	#lay(id: string, place: number): void {
		const went = this.places[place].id;
		this.places[place].lay(id);
		this.event = { kind: 'laid', place, id, went };
		this.#turn(place);
	}

	/** The turn goes to an open place, else to the place after this one. */
	#turn(place: number): void {
		const open = this.ids.indexOf(null);
		this.next = open >= 0 ? open : (place + 1) % this.places.length;
	}
}
