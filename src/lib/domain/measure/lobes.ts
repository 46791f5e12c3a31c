import { smoothRound } from './crests';
import { DIRECTIONS } from './polarOutline';

/** Smoothing round the section, directions (five degrees): the mesh's own columns are gone, ten lobes are not. */
const SMOOTH = 10;
/** Swing of the turning, over that of a circle, between a lobe and the dips beside it. */
const SWING = 0.6;

/**
 * How many times an outline turns more and less again on its way round: 2 for a lens, 3 for a triangle, 4 for an oval that is nearly a
 * rectangle. More are lobes too low to have hollows between them.
 */
export function lobes(logRadius: Float64Array): number {
	const y = smoothRound(logRadius, SMOOTH);
	const step = (2 * Math.PI) / DIRECTIONS;
	const n = DIRECTIONS;
	const turning = (i: number): number => {
		const at = ((i % n) + n) % n;
		return 1 - (y[(at + 1) % n] - 2 * y[at] + y[(at + n - 1) % n]) / step ** 2;
	};
	let tops = 0;
	let rising = true;
	let best = turning(0);
	// the first turn round finds where it stands, the second counts
	for (let i = 1; i <= 2 * n; i++) {
		const here = turning(i);
		if (rising ? here >= best : here <= best) best = here;
		else if (Math.abs(here - best) > SWING) {
			if (rising && i > n) tops++;
			rising = !rising;
			best = here;
		}
	}
	return tops;
}
