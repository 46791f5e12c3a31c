import { seededRandom } from '../random/seededRandom';

/** A source of numbers in 0 .. 1, 1 excluded. */
export type Random = () => number;

/**
 * Random numbers that are the same for the same words on every machine. The mixing of words is FNV-1a, 32 bit
 * (Fowler, Noll & Vo, IETF draft-eastlake-fnv).
 */
export function seeded(seed: string): Random {
	let state = 0x811c9dc5;
	for (let i = 0; i < seed.length; i += 1) state = Math.imul(state ^ seed.charCodeAt(i), 0x01000193);
	return seededRandom(state);
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
