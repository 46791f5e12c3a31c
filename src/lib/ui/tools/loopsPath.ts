/** SVG path data of closed loops (x, y pairs, y up): y turned over, even-odd. */
export function loopsPath(loops: Iterable<ArrayLike<number>>, decimals = 3): string {
	let path = '';
	for (const loop of loops) {
		for (let i = 0; i + 1 < loop.length; i += 2)
			path += `${i ? 'L' : 'M'}${+loop[i].toFixed(decimals)} ${+(-loop[i + 1]).toFixed(decimals)}`;
		path += 'z';
	}
	return path;
}
