/** SVG path of a closed outline, y up in, y down out. */
export const outlinePath = (points: readonly (readonly [number, number])[]): string =>
	points.map(([x, y], i) => `${i ? 'L' : 'M'}${x.toFixed(2)} ${(-y).toFixed(2)}`).join('') + 'Z';
