import { eruptionTime } from './eruptionTime';
import type { Jaw } from './jaw';
import { phaseAt } from './phaseAt';

export interface Eruption {
	position: number;
	generation: number;
	time_d: number;
}

/** Eruptions after `from_d` up to and including `to_d`, in order of time. Each also ends the tooth before it. */
export function eruptionsBetween(jaw: Jaw, from_d: number, to_d: number): Eruption[] {
	const found: Eruption[] = [];
	for (let position = 1; position <= jaw.positions; position++) {
		const last = phaseAt(jaw, position, to_d).generation;
		for (let generation = last; ; generation--) {
			const time_d = eruptionTime(jaw, position, generation);
			if (!(time_d > from_d)) break;
			if (time_d <= to_d) found.push({ position, generation, time_d });
		}
	}
	return found.sort((a, b) => a.time_d - b.time_d || a.position - b.position);
}
