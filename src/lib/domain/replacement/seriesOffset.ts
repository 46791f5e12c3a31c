import { SAME_CYCLES } from './jaw';

/**
 * d_q: how much later the tooth `q` positions further back erupts, in cycles, -0.5 .. 0.5 (0 = together):
 * d_q = q / z - floor(q / z + 0.5). Half a cycle is -0.5, neither earlier nor later.
 */
export function seriesOffset(spacing: number, q: number): number {
	const cycles = q / spacing;
	const offset = cycles - Math.floor(cycles + 0.5 + SAME_CYCLES);
	return Math.abs(offset) < SAME_CYCLES ? 0 : offset;
}
