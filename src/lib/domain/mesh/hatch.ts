/**
 * Parallel lines at 45 degrees, rising to the right, over the inside of closed polygons (x, y pairs; holes are loops
 * inside others), as a cut face is drawn. Lines lie on one grid, so that neighbouring faces match.
 * Returns x0, y0, x1, y1 per line.
 */
export function hatch(
	loops: readonly ArrayLike<number>[],
	spacing: number,
): [number, number, number, number][] {
	const lines: [number, number, number, number][] = [];
	if (!(spacing > 0)) return lines;
	// in a frame turned by 45 degrees the lines are level: a along them, b across
	const r = Math.SQRT1_2;
	let [least, most] = [Infinity, -Infinity];
	for (const loop of loops) {
		for (let i = 0; i < loop.length; i += 2) {
			const b = (loop[i + 1] - loop[i]) * r;
			least = Math.min(least, b);
			most = Math.max(most, b);
		}
	}
	for (let k = Math.ceil(least / spacing); k * spacing <= most; k++) {
		const level = k * spacing;
		const cuts: number[] = [];
		for (const loop of loops) {
			for (let i = 0, j = loop.length - 2; i < loop.length; j = i, i += 2) {
				const [b0, b1] = [(loop[j + 1] - loop[j]) * r, (loop[i + 1] - loop[i]) * r];
				if (b0 >= level === b1 >= level) continue;
				const [a0, a1] = [(loop[j + 1] + loop[j]) * r, (loop[i + 1] + loop[i]) * r];
				cuts.push(a0 + ((a1 - a0) * (level - b0)) / (b1 - b0));
			}
		}
		cuts.sort((x, y) => x - y);
		for (let i = 0; i + 1 < cuts.length; i += 2) {
			const at = (a: number): [number, number] => [(a - level) * r, (a + level) * r];
			lines.push([...at(cuts[i]), ...at(cuts[i + 1])]);
		}
	}
	return lines;
}
