/**
 * Counted resources: one load per key however many ask, graphics memory given back when the last user
 * leaves, and a few unused ones kept in main memory so that they come back at once.
 */
export interface PoolOptions<T> {
	load: (key: string) => Promise<T>;
	/** Gives back the graphics memory of a resource that nobody uses; it may be used again later. */
	park: (resource: T) => void;
	/** how many unused resources stay in main memory */
	keep: number;
}

export interface Loan<T> {
	readonly resource: T;
	/** Safe to call more than once. */
	release(): void;
}

export interface Pool<T> {
	/** Rejects with the load's own error; a failed load is forgotten, so that the next ask tries again. */
	borrow(key: string): Promise<Loan<T>>;
	preload(key: string): Promise<void>;
	/** resources with at least one user */
	readonly used: number;
	/** resources held at all */
	readonly held: number;
	/** Parks and forgets everything. */
	clear(): void;
}

interface Entry<T> {
	users: number;
	ready: Promise<T>;
	resource?: T;
}

export const createPool = <T>({ load, park, keep }: PoolOptions<T>): Pool<T> => {
	/** oldest use first */
	const entries = new Map<string, Entry<T>>();

	const touch = (key: string, entry: Entry<T>) => {
		entries.delete(key);
		entries.set(key, entry);
	};

	const trim = () => {
		let spare = [...entries.values()].filter((e) => e.users === 0 && e.resource !== undefined).length - keep;
		for (const [key, entry] of entries) {
			if (spare <= 0) break;
			if (entry.users > 0 || entry.resource === undefined) continue;
			entries.delete(key);
			spare--;
		}
	};

	const find = (key: string): Entry<T> => {
		let entry = entries.get(key);
		if (!entry) {
			const made: Entry<T> = { users: 0, ready: load(key) };
			made.ready.then(
				(resource) => {
					made.resource = resource;
					trim();
				},
				() => {
					if (entries.get(key) === made) entries.delete(key);
				},
			);
			entry = made;
		}
		touch(key, entry);
		return entry;
	};

	return {
		async borrow(key) {
			const entry = find(key);
			entry.users++;
			let resource: T;
			try {
				resource = await entry.ready;
			} catch (error) {
				entry.users--;
				throw error;
			}
			let lent = true;
			return {
				resource,
				release() {
					if (!lent) return;
					lent = false;
					entry.users--;
					if (entry.users > 0) return;
					park(resource);
					trim();
				},
			};
		},
		async preload(key) {
			await find(key).ready;
		},
		get used() {
			return [...entries.values()].filter((e) => e.users > 0).length;
		},
		get held() {
			return entries.size;
		},
		clear() {
			for (const entry of entries.values()) if (entry.resource !== undefined) park(entry.resource);
			entries.clear();
		},
	};
};
