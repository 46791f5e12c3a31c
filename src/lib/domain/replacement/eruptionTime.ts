import { timeOfCycles } from './cyclesAt';
import type { Jaw } from './jaw';
import { lagAt } from './lagAt';

/**
 * When the tooth of a generation erupts at a position, days: t(n, k) = t0 + T (k + (n - 1) / z) while the period is
 * constant. Infinity where a slowing clock never gets there.
 */
export function eruptionTime(jaw: Jaw, position: number, generation: number): number {
	const shift = jaw.jitter?.(position, generation) ?? 0;
	return timeOfCycles(jaw, generation + lagAt(jaw, position) + shift);
}
