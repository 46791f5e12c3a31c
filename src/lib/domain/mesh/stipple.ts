import type { DepthMap } from './depthMap';

/**
 * Dots that shade a view as a pen does: evenly spread, closer together where it is darker. `tone` gives the shade of
 * the triangle seen in a cell, 0 = paper .. 1 = darkest; `closest_mm` is the distance between dots at 1 and grows
 * with the root of the lightness. Returns x, y pairs, mm; the same view always gives the same dots.
 */
export function stipple(map: DepthMap, tone: (triangle: number) => number, closest_mm: number): number[] {
	const closest = closest_mm / map.cell_mm;
	if (!(closest > 0)) return [];
	const reach = (t: number): number => closest / Math.sqrt(t);
	const farthest = reach(LIGHTEST);
	const bucket = Math.max(1, farthest);
	const columns = Math.ceil(map.width / bucket);
	const rows = Math.ceil(map.height / bucket);
	const kept = Array.from({ length: columns * rows }, () => [] as number[]);
	const dots: number[] = [];
	const tries = Math.ceil((14 * map.width * map.height) / (closest * closest));
	// the R2 sequence covers the plane evenly (Roberts 2018, additive recurrence on the plastic number)
	let [u, v] = [0.5, 0.5];
	for (let i = 0; i < tries; i++) {
		u = (u + 0.7548776662466927) % 1;
		v = (v + 0.5698402909980532) % 1;
		// shaken, so that no grid shows
		const x = u * map.width + noise(2 * i) * closest * 0.5;
		const y = v * map.height + noise(2 * i + 1) * closest * 0.5;
		const [ci, cj] = [Math.floor(x), Math.floor(y)];
		if (ci < 2 || cj < 2 || ci >= map.width - 2 || cj >= map.height - 2) continue;
		const triangle = map.triangle[cj * map.width + ci];
		const t = triangle < 0 ? 0 : tone(triangle);
		if (t < LIGHTEST) continue;
		const least = reach(t);
		const [bi, bj] = [Math.floor(x / bucket), Math.floor(y / bucket)];
		let free = true;
		for (let j = Math.max(0, bj - 1); j <= Math.min(rows - 1, bj + 1) && free; j++) {
			for (let k = Math.max(0, bi - 1); k <= Math.min(columns - 1, bi + 1) && free; k++) {
				const near = kept[j * columns + k];
				for (let m = 0; m < near.length; m += 2)
					if (Math.hypot(near[m] - x, near[m + 1] - y) < least) free = false;
			}
		}
		if (!free) continue;
		kept[bj * columns + bi].push(x, y);
		dots.push(map.origin_mm[0] + x * map.cell_mm, map.origin_mm[1] + y * map.cell_mm);
	}
	return dots;
}

/** Shades below this stay paper. */
const LIGHTEST = 0.06;

/** Evenly spread over -1 .. 1, the same for the same number (integer hash by Wellons, `lowbias32`). */
function noise(i: number): number {
	let x = i | 0;
	x = Math.imul(x ^ (x >>> 16), 0x7feb352d);
	x = Math.imul(x ^ (x >>> 15), 0x846ca68b);
	x ^= x >>> 16;
	return (x >>> 0) / 2 ** 31 - 1;
}
