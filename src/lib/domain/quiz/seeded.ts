/** A source of numbers in 0 .. 1, 1 excluded. */
export type Random = () => number;

/**
 * Random numbers that are the same for the same seed on every machine.
 * Source: mulberry32, Tommy Ettinger 2017, public domain; the mixing of strings is FNV-1a, 32 bit
 * (Fowler, Noll & Vo, IETF draft-eastlake-fnv).
 */
export function seeded(seed: string): Random {
	let state = 0x811c9dc5;
	for (let i = 0; i < seed.length; i += 1) state = Math.imul(state ^ seed.charCodeAt(i), 0x01000193);
	return () => {
		state = (state + 0x6d2b79f5) | 0;
		let t = Math.imul(state ^ (state >>> 15), 1 | state);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
}

/** The items in a random order; Fisher and Yates, as Durstenfeld 1964 wrote it (CACM 7:420, algorithm 235). */
export function shuffled<T>(items: readonly T[], random: Random): T[] {
	const result = [...items];
	for (let i = result.length - 1; i > 0; i -= 1) {
		const j = Math.floor(random() * (i + 1));
		[result[i], result[j]] = [result[j], result[i]];
	}
	return result;
}
