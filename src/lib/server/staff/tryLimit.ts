export interface TryRules {
	/** so many wrong tries are free */
	free: number;
	/** the wait after the first that is not, ms */
	first_ms: number;
	/** each further wrong one doubles the wait, up to this */
	most_ms: number;
}

export interface TryLimit {
	/**
	 * Before a secret is looked at: how long to wait, ms. With 0 the try is counted as a wrong one at once, so that many
	 * at the same time are no way round.
	 */
	take(from: string): number;
	/** It was the right one: this asker begins anew. */
	good(from: string): void;
	/** How long this asker has to wait now, ms; counts nothing. */
	wait(from: string): number;
}

interface Count {
	wrong: number;
	/** last wrong try */
	at_ms: number;
	until_ms: number;
}

/** Without a wrong try for this long beyond the wait, the count begins anew. */
const FORGET_ms = 3_600_000;
const MOST_ASKERS = 10_000;

/**
 * Slows down guessing: by `each` asker, and by `all` askers together, so that many addresses help little. `now`: ms, of a
 * clock that nobody sets.
 */
export function tryLimit(
	each: TryRules,
	all: TryRules,
	now: () => number = () => performance.now(),
): TryLimit {
	const askers = new Map<string, Count>();
	const everyone: Count = { wrong: 0, at_ms: 0, until_ms: 0 };
	const stale = ({ at_ms, until_ms }: Count) => now() - Math.max(at_ms, until_ms) > FORGET_ms;
	const waitOf = ({ until_ms }: Count) => Math.max(0, until_ms - now());
	const of = (from: string): Count => {
		const known = askers.get(from);
		if (known && !stale(known)) return known;
		return { wrong: 0, at_ms: now(), until_ms: 0 };
	};
	const wait = (from: string) => Math.max(waitOf(of(from)), waitOf(everyone));
	const wrong = (count: Count, { free, first_ms, most_ms }: TryRules) => {
		if (stale(count)) count.wrong = 0;
		count.wrong += 1;
		count.at_ms = now();
		const beyond = count.wrong - free;
		if (beyond >= 0) count.until_ms = now() + Math.min(most_ms, first_ms * 2 ** Math.min(beyond, 30));
	};
	return {
		take(from) {
			const left = wait(from);
			if (left > 0) return left;
			const count = of(from);
			askers.delete(from);
			if (askers.size >= MOST_ASKERS) askers.delete(askers.keys().next().value!);
			askers.set(from, count);
			wrong(count, each);
			wrong(everyone, all);
			return 0;
		},
		good(from) {
			askers.delete(from);
			everyone.wrong = Math.max(0, everyone.wrong - 1);
			if (everyone.wrong < all.free) everyone.until_ms = 0;
		},
		wait,
	};
}
