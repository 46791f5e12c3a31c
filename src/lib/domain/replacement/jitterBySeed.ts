import type { Jitter } from './jaw';
import { normalFrom, seededRandom } from '../random/seededRandom';

/** Never so far that two teeth of a position change places. */
const MOST = 0.45;

/**
 * Irregular eruptions that look alive: shifts with a normal distribution, the same for the same seed.
 * An ILLUSTRATION: no published variance was found.
 * @param deviation standard deviation, cycles (0.1 = a tenth of the period)
 */
export function jitterBySeed(seed: number, deviation = 0.1): Jitter {
	return (position, generation) => {
		const own = Math.imul(position, 0x9e3779b1) ^ Math.imul(generation + 1, 0x85ebca6b);
		const shift = deviation * normalFrom(seededRandom(seed ^ own));
		return Math.min(MOST, Math.max(-MOST, shift));
	};
}
