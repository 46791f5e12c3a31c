/**
 * The part of a closed line (x, y pairs) at or above a height (Sutherland & Hodgman 1974,
 * doi:10.1145/360767.360802); parts that fall asunder stay joined along that height. Empty when nothing is left.
 */
export function clipLoop(points: readonly number[], height: number): number[] {
	const out: number[] = [];
	for (let i = 0; i < points.length; i += 2) {
		const j = (i + 2) % points.length;
		const [x0, y0, x1, y1] = [points[i], points[i + 1], points[j], points[j + 1]];
		if (y0 >= height) out.push(x0, y0);
		if (y0 >= height !== y1 >= height) out.push(x0 + ((x1 - x0) * (height - y0)) / (y1 - y0), height);
	}
	return out.length >= 6 ? out : [];
}
