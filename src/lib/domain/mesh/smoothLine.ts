/** Takes the tremble out of a line: each pass puts every point between itself and the middle of its neighbours. Ends of an open line stay. */
export function smoothLine(
	points: readonly number[],
	size: 2 | 3,
	closed: boolean,
	passes: number,
): number[] {
	let now = [...points];
	const n = now.length / size;
	if (n < 3) return now;
	for (let pass = 0; pass < passes; pass++) {
		const next = [...now];
		for (let i = closed ? 0 : 1; i < (closed ? n : n - 1); i++) {
			const [before, after] = [((i + n - 1) % n) * size, ((i + 1) % n) * size];
			for (let k = 0; k < size; k++)
				next[i * size + k] = now[i * size + k] / 2 + (now[before + k] + now[after + k]) / 4;
		}
		now = next;
	}
	return now;
}
