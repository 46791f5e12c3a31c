/** Share of right answers among those given; null without answers. */
export function difficulty(right: number, answered: number): number | null {
	return answered > 0 ? right / answered : null;
}

/** 97.5 % point of the standard normal distribution */
const Z = 1.959964;

/**
 * 95 % interval of a share, after Wilson 1927 (J. Am. Stat. Assoc. 22:209-212); null without answers.
 * It stays within 0 .. 1 and is honest for few answers and for shares near 0 or 1.
 */
export function wilson(right: number, answered: number): { low: number; high: number } | null {
	if (answered <= 0) return null;
	const p = right / answered;
	const z2 = (Z * Z) / answered;
	const middle = (p + z2 / 2) / (1 + z2);
	const half = (Z / (1 + z2)) * Math.sqrt((p * (1 - p)) / answered + z2 / (4 * answered));
	return { low: Math.max(0, middle - half), high: Math.min(1, middle + half) };
}

/** Share right beyond guessing among `options`: (p - 1/k) / (1 - 1/k); below 0 = worse than guessing. */
export function chanceCorrected(p: number, options: number): number {
	if (options < 2) throw new Error('chanceCorrected: at least two options');
	return (p - 1 / options) / (1 - 1 / options);
}
