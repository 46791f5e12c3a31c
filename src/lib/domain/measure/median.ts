/** Middle value (the upper one of two); NaN of none. */
export function median(values: readonly number[]): number {
	const sorted = [...values].sort((a, b) => a - b);
	return sorted.length > 0 ? sorted[sorted.length >> 1] : NaN;
}
