import type { Jaw } from './jaw';

/** How far a position lags behind position 1, cycles: the sum of 1/z over the steps before it. */
export function lagAt(jaw: Pick<Jaw, 'spacing'>, position: number): number {
	const { spacing } = jaw;
	if (typeof spacing === 'number') return (position - 1) / spacing;
	let lag = 0;
	for (let i = 0; i < position - 1; i++) lag += 1 / spacing[i];
	return lag;
}
