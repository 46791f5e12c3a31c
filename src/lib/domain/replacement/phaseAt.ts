import { cyclesAt } from './cyclesAt';
import { fraction, type Jaw } from './jaw';
import { lagAt } from './lagAt';

export interface PositionPhase {
	/** generation of the tooth that erupted last */
	generation: number;
	/** 0 = just erupted, towards 1 = the next is about to erupt */
	phase: number;
}

/** Where a position stands in its cycle at a time: phi(n, t) = frac((t - t0) / T - (n - 1) / z). */
export function phaseAt(jaw: Jaw, position: number, t_d: number): PositionPhase {
	const cycles = cyclesAt(jaw, t_d) - lagAt(jaw, position);
	const { jitter } = jaw;
	const phase = fraction(cycles);
	const generation = Math.round(cycles - phase);
	if (!jitter) return { generation, phase };
	// shifted eruptions: the last one that lies before now
	let k = generation + 1;
	while (k + jitter(position, k) > cycles) k--;
	const from = k + jitter(position, k);
	const to = k + 1 + jitter(position, k + 1);
	return { generation: k, phase: Math.min(1 - 1e-12, (cycles - from) / (to - from)) };
}
