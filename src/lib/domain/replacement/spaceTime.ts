import type { Jaw } from './jaw';
import { phaseAt } from './phaseAt';

/** Phases of a whole row over a stretch of time, for a picture: one row a position, one column a moment. */
export interface SpaceTime {
	positions: number;
	columns: number;
	from_d: number;
	to_d: number;
	/** phase 0 .. 1; index = (position - 1) * columns + column; column c is the moment from + (c + 0.5) * step */
	phases: Float32Array;
	/** generation of the tooth, same index */
	generations: Int32Array;
}

export function spaceTime(jaw: Jaw, from_d: number, to_d: number, columns: number): SpaceTime {
	const phases = new Float32Array(jaw.positions * columns);
	const generations = new Int32Array(jaw.positions * columns);
	const step = (to_d - from_d) / columns;
	for (let n = 1; n <= jaw.positions; n++)
		for (let c = 0; c < columns; c++) {
			const found = phaseAt(jaw, n, from_d + (c + 0.5) * step);
			phases[(n - 1) * columns + c] = found.phase;
			generations[(n - 1) * columns + c] = found.generation;
		}
	return { positions: jaw.positions, columns, from_d, to_d, phases, generations };
}
