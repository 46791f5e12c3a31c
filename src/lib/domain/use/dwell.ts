/**
 * How long somebody stayed, in steps. An average exhibit of a science centre holds people for about a minute (Falk;
 * Sandifer; Humphrey & Gutwill): the steps are finest round it. Where they end is a choice of this project.
 */
export const DWELL_BUCKETS = ['under-10s', '10-30s', '30-60s', '1-2min', '2-5min', 'over-5min'] as const;
export type DwellBucket = (typeof DWELL_BUCKETS)[number];

/** upper ends, ms, of all but the last */
const ENDS_ms = [10_000, 30_000, 60_000, 120_000, 300_000];

export function dwellBucket(dwell_ms: number): DwellBucket {
	const at = ENDS_ms.findIndex((end) => dwell_ms < end);
	return DWELL_BUCKETS[at < 0 ? ENDS_ms.length : at];
}

/** The step in which half have left, from counts in the order of the steps; null for none. */
export function medianBucket(counts: readonly number[]): DwellBucket | null {
	const total = counts.reduce((sum, count) => sum + count, 0);
	if (total === 0) return null;
	let below = 0;
	for (const [i, count] of counts.entries()) {
		below += count;
		if (below * 2 >= total) return DWELL_BUCKETS[i];
	}
	return null;
}
