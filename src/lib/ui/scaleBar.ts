/**
 * Length for a scale bar: the largest of 1, 2 or 5 times a power of ten (mm) that is drawn no
 * longer than `longest_px`.
 */
export function scaleBarLength_mm(pxPerMm: number, longest_px: number): number {
	const longest_mm = longest_px / pxPerMm;
	if (!(longest_mm > 0) || !Number.isFinite(longest_mm)) return 0;
	const decade = 10 ** Math.floor(Math.log10(longest_mm));
	for (const step of [5, 2]) if (step * decade <= longest_mm * (1 + 1e-9)) return step * decade;
	return decade;
}
