/** The middle line of what is left below a cut: its shadow on the felt is cut too. */
import type { CentreLine } from '../centreLine';

/** Points above the cut are moved down the line to it; mm, tooth frame. */
export const cutLine = ({ points }: CentreLine, height_mm: number): CentreLine => {
	const out = points.slice();
	const count = points.length / 4;
	// where the line goes through the cut
	let end: Float32Array | null = null;
	for (let i = 0; i + 1 < count; i++) {
		const [low, high] = [points[i * 4 + 1], points[i * 4 + 5]];
		if (low > height_mm || high <= height_mm) continue;
		const t = (height_mm - low) / (high - low);
		end = Float32Array.from({ length: 4 }, (_, k) => points[i * 4 + k] * (1 - t) + points[i * 4 + 4 + k] * t);
	}
	for (let i = 0; i < count; i++) {
		if (points[i * 4 + 1] <= height_mm) continue;
		if (end) out.set(end, i * 4);
		else out[i * 4 + 1] = height_mm;
	}
	return { points: out };
};
