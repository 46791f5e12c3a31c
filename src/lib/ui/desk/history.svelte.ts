/** Undo and redo over values that are replaced, never changed. */
export class History<T> {
	#now: T;
	#past = $state.raw<readonly T[]>([]);
	#future = $state.raw<readonly T[]>([]);
	#lastMerge: string | null = null;

	constructor(first: T) {
		this.#now = $state.raw(first);
	}

	get now(): T {
		return this.#now;
	}
	get canUndo(): boolean {
		return this.#past.length > 0;
	}
	get canRedo(): boolean {
		return this.#future.length > 0;
	}

	/** Steps with one `merge` name in a row are undone together: the moves of one drag. */
	change(next: T, merge: string | null = null): void {
		if (next === this.#now) return;
		if (merge === null || merge !== this.#lastMerge) this.#past = [...this.#past.slice(1 - KEPT), this.#now];
		this.#lastMerge = merge;
		this.#future = [];
		this.#now = next;
	}
	/** What follows is a step of its own. */
	settle(): void {
		this.#lastMerge = null;
	}
	undo(): void {
		const before = this.#past.at(-1);
		if (before === undefined) return;
		this.settle();
		this.#future = [this.#now, ...this.#future];
		this.#past = this.#past.slice(0, -1);
		this.#now = before;
	}
	redo(): void {
		const [after, ...rest] = this.#future;
		if (after === undefined) return;
		this.settle();
		this.#past = [...this.#past, this.#now];
		this.#future = rest;
		this.#now = after;
	}
	/** Starts over; nothing before can be brought back. */
	restart(first: T): void {
		this.settle();
		this.#past = [];
		this.#future = [];
		this.#now = first;
	}
}

/** Steps that can be undone. */
const KEPT = 200;
