/**
 * Gaussian smoothing from level to level; `sigma` in levels. Levels without values (null) take those of their neighbours, or
 * nothing but zeros where there are none.
 */
export function smoothUp(rows: readonly (Float64Array | null)[], sigma: number): Float64Array[] {
	const width = rows.find((row) => row !== null)?.length ?? 0;
	const reach = Math.ceil(3 * sigma);
	return rows.map((_, i) => {
		const out = new Float64Array(width);
		let sum = 0;
		for (let j = Math.max(0, i - reach); j <= Math.min(rows.length - 1, i + reach); j++) {
			const row = rows[j];
			if (!row) continue;
			const weight = Math.exp(-0.5 * ((i - j) / sigma) ** 2);
			sum += weight;
			for (let k = 0; k < width; k++) out[k] += weight * row[k];
		}
		for (let k = 0; sum > 0 && k < width; k++) out[k] /= sum;
		return out;
	});
}
