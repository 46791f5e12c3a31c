const HEIGHT = Math.sqrt(3) / 2;
type Point = readonly [x: number, y: number];
const CORNERS: readonly Point[] = [
	[0, 0],
	[1, 0],
	[0.5, HEIGHT],
];

/** The point of the triangle of side 1 (see `toPlane`) nearest to a point: itself inside, on the rim outside. */
export function nearestInTriangle(x: number, y: number): Point {
	const inside = y >= 0 && y <= 2 * HEIGHT * x && y <= 2 * HEIGHT * (1 - x);
	if (inside) return [x, y];
	let best: Point = CORNERS[0];
	let least = Infinity;
	CORNERS.forEach(([ax, ay], i) => {
		const [bx, by] = CORNERS[(i + 1) % 3];
		const [dx, dy] = [bx - ax, by - ay];
		const along = Math.min(1, Math.max(0, (x - ax) * dx + (y - ay) * dy));
		const [px, py] = [ax + along * dx, ay + along * dy];
		const far = Math.hypot(x - px, y - py);
		if (far < least) {
			least = far;
			best = [px, py];
		}
	});
	return best;
}
