/**
 * Osborn 1974 (Journal of Theoretical Biology 46): eruption of replacement r at position n, t = k exp(a r + b n).
 * Only the abstract was read; its minus signs are garbled and are read as minus.
 */
export interface OsbornJaw {
	/** growth of the time per generation */
	a: number;
	/** growth of the time per position */
	b: number;
	/** scale, days; default 1 */
	k_d?: number;
}

export interface OsbornWave {
	/** his visible wave, positions: w = 2 (a - b) / (a - 2 b); null unless a > 2 b, when waves travel forward */
	length: number | null;
	/** z = a / b */
	spacing: number;
	/** each period is so many times the one before: exp(a) */
	periodGrowth: number;
}

export function osbornWave({ a, b }: OsbornJaw): OsbornWave {
	return {
		length: a > 2 * b ? (2 * (a - b)) / (a - 2 * b) : null,
		spacing: a / b,
		periodGrowth: Math.exp(a),
	};
}

/** When replacement `r` erupts at position `n`, days. */
export const osbornEruption = ({ a, b, k_d = 1 }: OsbornJaw, n: number, r: number): number =>
	k_d * Math.exp(a * r + b * n);
