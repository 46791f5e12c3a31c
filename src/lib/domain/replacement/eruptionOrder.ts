import { fraction, SAME_CYCLES, type Jaw } from './jaw';
import { lagAt } from './lagAt';

/** Positions in the order in which they erupt within one period, those that erupt together in one group. */
export function eruptionOrder(jaw: Pick<Jaw, 'positions' | 'spacing'>): number[][] {
	const lags = Array.from({ length: jaw.positions }, (_, i) => ({
		position: i + 1,
		lag: fraction(lagAt(jaw, i + 1)),
	}));
	lags.sort((a, b) => a.lag - b.lag || a.position - b.position);
	const groups: number[][] = [];
	let last = -1;
	for (const { position, lag } of lags) {
		if (groups.length > 0 && lag - last < SAME_CYCLES) groups[groups.length - 1].push(position);
		else groups.push([position]);
		last = lag;
	}
	for (const group of groups) group.sort((a, b) => a - b);
	return groups;
}

/** Day within the period on which a position erupts, 0 .. T (constant period). */
export function eruptionDay(jaw: Pick<Jaw, 'period_d' | 'spacing'>, position: number): number {
	return jaw.period_d * fraction(lagAt(jaw, position));
}
