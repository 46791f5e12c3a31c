import type { FrameSummary } from '../../content/screens/beat';

/** Median and 95th percentile (nearest rank) of the times between frames, ms; null for none. */
export function frameSummary(times_ms: readonly number[]): FrameSummary | null {
	if (times_ms.length === 0) return null;
	const sorted = [...times_ms].sort((a, b) => a - b);
	const at = (share: number) => round(sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)]);
	return { count: sorted.length, median_ms: at(0.5), p95_ms: at(0.95) };
}

const round = (ms: number): number => Math.round(ms * 10) / 10;
