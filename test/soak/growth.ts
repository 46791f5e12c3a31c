/** One look at the screen between two visitors. */
export interface Sample {
	/** hours of the screen's clock since the start */
	at_h: number;
	value: number;
}

export interface Growth {
	/** median of the first quarter after the warm-up, and of the last quarter */
	first: number;
	last: number;
	/** last / first - 1 */
	share: number;
	samples: number;
}

/**
 * How much a value has grown after a warm-up. Quarters and medians, since one visitor leaves more behind until the
 * next one comes than another does.
 */
export function growth(samples: readonly Sample[], warmUp_h: number): Growth {
	const after = samples.filter(({ at_h }) => at_h >= warmUp_h).map(({ value }) => value);
	if (after.length < 8)
		throw new Error(`growth: ${after.length} samples after the warm-up, at least 8 are needed`);
	const quarter = Math.floor(after.length / 4);
	const first = median(after.slice(0, quarter));
	const last = median(after.slice(-quarter));
	return {
		first,
		last,
		share: first === 0 ? (last === 0 ? 0 : Infinity) : last / first - 1,
		samples: after.length,
	};
}

function median(values: number[]): number {
	const sorted = [...values].sort((a, b) => a - b);
	const half = Math.floor(sorted.length / 2);
	return sorted.length % 2 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
}
