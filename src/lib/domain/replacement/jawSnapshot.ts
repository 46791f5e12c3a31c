import { eruptionTime } from './eruptionTime';
import { CYCLE_SHARES, type CycleShares } from './cycleShares';
import type { Jaw } from './jaw';
import { lifeStage, type LifeStage } from './lifeStage';
import { phaseAt } from './phaseAt';

export const POSITION_STATES = ['erupting', 'functional', 'loosening', 'empty'] as const;
export type PositionState = (typeof POSITION_STATES)[number];

export interface PositionNow {
	/** from 1 at the front */
	position: number;
	/** of the tooth that erupted last */
	generation: number;
	/** 0 = just erupted, towards 1 = the next is about to erupt */
	phase: number;
	state: PositionState;
	/** how much of the crown stands out of the jaw: 0 .. 1, 0 while empty */
	exposed: number;
	/** when it erupted, and when the next one will, days; the first is -Infinity or the second Infinity at the ends of a slowing clock */
	erupted_d: number;
	next_d: number;
	/** gallery stage (ours) of the tooth that waits below, 0 .. 4 */
	successor: LifeStage;
}

/** All positions of a row at a time. */
export function jawSnapshot(jaw: Jaw, t_d: number, shares: CycleShares = CYCLE_SHARES): PositionNow[] {
	return Array.from({ length: jaw.positions }, (_, i) => {
		const position = i + 1;
		const { generation, phase } = phaseAt(jaw, position, t_d);
		const state = stateAt(phase, shares);
		return {
			position,
			generation,
			phase,
			state,
			exposed: exposedAt(phase, shares),
			erupted_d: eruptionTime(jaw, position, generation),
			next_d: eruptionTime(jaw, position, generation + 1),
			// it erupts at the end of this cycle: half of its life, see lifeStage
			successor: lifeStage(phase / 2),
		};
	});
}

export function stateAt(phase: number, shares: CycleShares = CYCLE_SHARES): PositionState {
	if (phase >= 1 - shares.empty) return 'empty';
	if (phase >= 1 - shares.empty - shares.loosening) return 'loosening';
	return phase < shares.erupting ? 'erupting' : 'functional';
}

/** Height of the crown over the gum, 0 .. 1: rises while it erupts, 0 where the place is empty. */
export function exposedAt(phase: number, shares: CycleShares = CYCLE_SHARES): number {
	if (phase >= 1 - shares.empty) return 0;
	const t = Math.min(1, phase / shares.erupting);
	return t * t * (3 - 2 * t);
}
