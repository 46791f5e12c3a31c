/** Solves the 4x4 normal equations of a cubic through (t, value) pairs; coefficients c0 + c1 t + c2 t^2 + c3 t^3. */
function cubicFit(t: Float64Array, value: Float64Array): Float64Array {
	const m = Array.from({ length: 4 }, () => new Float64Array(5));
	for (let i = 0; i < t.length; i++) {
		const powers = [1, t[i], t[i] ** 2, t[i] ** 3];
		for (let a = 0; a < 4; a++) {
			for (let b = 0; b < 4; b++) m[a][b] += powers[a] * powers[b];
			m[a][4] += powers[a] * value[i];
		}
	}
	for (let i = 0; i < 4; i++) {
		let pivot = i;
		for (let k = i + 1; k < 4; k++) if (Math.abs(m[k][i]) > Math.abs(m[pivot][i])) pivot = k;
		[m[i], m[pivot]] = [m[pivot], m[i]];
		for (let k = 0; k < 4; k++) {
			if (k === i) continue;
			const f = m[k][i] / m[i][i];
			for (let c = i; c < 5; c++) m[k][c] -= f * m[i][c];
		}
	}
	return Float64Array.from(m, (row, i) => row[4] / row[i]);
}

/**
 * Total turning of a centreline, degrees: the angles between successive directions of the smooth curve (a cubic in
 * height on either side) through the sections' centres, added up from the lowest to the highest.
 *
 * @param heights mm above the base, rising, at least 5
 * @param centres u, v pairs of the sections' centres, mm
 */
export function centrelineTurning(heights: Float64Array, centres: Float64Array): number {
	const n = heights.length;
	const top = heights[n - 1];
	const t = heights.map((h) => h / top);
	const u = cubicFit(
		t,
		Float64Array.from(heights, (_, i) => centres[i * 2]),
	);
	const v = cubicFit(
		t,
		Float64Array.from(heights, (_, i) => centres[i * 2 + 1]),
	);
	const slope = (c: Float64Array, at: number): number => (c[1] + 2 * c[2] * at + 3 * c[3] * at * at) / top;
	let total = 0;
	let px = 0;
	let py = 0;
	const steps = 64;
	for (let i = 0; i <= steps; i++) {
		const at = t[0] + ((1 - t[0]) * i) / steps;
		const x = slope(u, at);
		const y = slope(v, at);
		if (i > 0) {
			// angle between (px, py, 1) and (x, y, 1) by its sine and cosine, exact for small turns too
			const cross = Math.hypot(py - y, x - px, px * y - py * x);
			total += Math.atan2(cross, px * x + py * y + 1);
		}
		px = x;
		py = y;
	}
	return (total * 180) / Math.PI;
}
