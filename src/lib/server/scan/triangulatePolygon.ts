import earcut from 'earcut';

/** Up to here points on straight stretches are kept by a slower way of cutting. */
const FEW_CORNERS = 512;

/**
 * Splits one polygon of four or more corners into triangles of the same winding and calls `add` for each, with
 * places in the polygon (0 ..). A quadrilateral is cut along a diagonal that lies inside it; more corners are cut
 * in the polygon's mean plane (Newell normal), so that hollow outlines come out right. Bent or self-crossing
 * polygons, which have no right answer, become a fan.
 *
 * @param points x, y, z of the polygon's corners in order
 */
export function triangulatePolygon(
	points: ArrayLike<number>,
	corners: number,
	add: (a: number, b: number, c: number) => void,
): void {
	const normal = newellNormal(points, corners);
	if (corners === 4) {
		// the diagonal 0-2 is outside when corner 1 or 3 dents inwards
		const dented = turn(points, 0, 1, 2, normal) < 0 || turn(points, 2, 3, 0, normal) < 0;
		if (dented) {
			add(1, 2, 3);
			add(1, 3, 0);
		} else {
			add(0, 1, 2);
			add(0, 2, 3);
		}
		return;
	}
	const flat = projected(points, corners, normal);
	if (convex(flat)) {
		for (let i = 1; i + 1 < corners; i++) add(0, i, i + 1);
		return;
	}
	// earcut leaves out points on straight stretches; the neighbouring faces have them, so they must be kept
	let cut: ArrayLike<number> = earcut(flat, null, 2);
	if (cut.length !== (corners - 2) * 3 && corners <= FEW_CORNERS) cut = earsOf(flat) ?? cut;
	if (cut.length !== (corners - 2) * 3) {
		for (let i = 1; i + 1 < corners; i++) add(0, i, i + 1);
		return;
	}
	for (let k = 0; k < cut.length; k += 3) {
		const [a, b, c] = [cut[k], cut[k + 1], cut[k + 2]];
		// the projection keeps the polygon counter-clockwise, and so must the triangle be
		if (flatTurn(flat, a, b, c) < 0) add(a, c, b);
		else add(a, b, c);
	}
}

/** Cuts ears one by one, flat ones last; all points are used. Null when a self-crossing outline leaves none. */
function earsOf(flat: Float64Array): number[] | null {
	const left = Array.from({ length: flat.length / 2 }, (_, i) => i);
	const triangles: number[] = [];
	while (left.length > 3) {
		let best = -1;
		for (let i = 0; i < left.length; i++) {
			const [a, b, c] = [left.at(i - 1)!, left[i], left[(i + 1) % left.length]];
			const size = flatTurn(flat, a, b, c);
			if (size < 0 || (size === 0 && best >= 0)) continue;
			const free = left.every(
				(p) =>
					p === a ||
					p === b ||
					p === c ||
					flatTurn(flat, a, b, p) < 0 ||
					flatTurn(flat, b, c, p) < 0 ||
					flatTurn(flat, c, a, p) < 0,
			);
			if (!free) continue;
			best = i;
			if (size > 0) break;
		}
		if (best < 0) return null;
		triangles.push(left.at(best - 1)!, left[best], left[(best + 1) % left.length]);
		left.splice(best, 1);
	}
	return [...triangles, ...left];
}

function convex(flat: Float64Array): boolean {
	const n = flat.length / 2;
	let around = 0;
	for (let i = 0; i < n; i++) {
		const [j, k] = [(i + 1) % n, (i + 2) % n];
		if (flatTurn(flat, i, j, k) < 0) return false;
		// a star that winds twice turns left everywhere too: count how often x changes direction
		const here = flat[j * 2] - flat[i * 2];
		const next = flat[k * 2] - flat[j * 2];
		if (here > 0 && next <= 0) around++;
	}
	return around <= 1;
}

type Normal = readonly [number, number, number];

function newellNormal(p: ArrayLike<number>, corners: number): Normal {
	let x = 0;
	let y = 0;
	let z = 0;
	for (let i = 0, j = corners - 1; i < corners; j = i++) {
		const [a, b] = [j * 3, i * 3];
		x += (p[a + 1] - p[b + 1]) * (p[a + 2] + p[b + 2] - 2 * p[2]);
		y += (p[a + 2] - p[b + 2]) * (p[a] + p[b] - 2 * p[0]);
		z += (p[a] - p[b]) * (p[a + 1] + p[b + 1] - 2 * p[1]);
	}
	return [x, y, z];
}

/** Above 0 when the triangle turns the same way as the polygon. */
function turn(p: ArrayLike<number>, i: number, j: number, k: number, n: Normal): number {
	const [a, b, c] = [i * 3, j * 3, k * 3];
	const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
	const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
	return (uy * vz - uz * vy) * n[0] + (uz * vx - ux * vz) * n[1] + (ux * vy - uy * vx) * n[2];
}

function flatTurn(flat: Float64Array, a: number, b: number, c: number): number {
	return (
		(flat[b * 2] - flat[a * 2]) * (flat[c * 2 + 1] - flat[a * 2 + 1]) -
		(flat[b * 2 + 1] - flat[a * 2 + 1]) * (flat[c * 2] - flat[a * 2])
	);
}

/** Drops the axis along which the polygon faces most; the other two in the order that keeps its winding. */
function projected(p: ArrayLike<number>, corners: number, n: Normal): Float64Array {
	const size = n.map(Math.abs);
	const drop = size[0] >= size[1] && size[0] >= size[2] ? 0 : size[1] >= size[2] ? 1 : 2;
	let [u, v] = [(drop + 1) % 3, (drop + 2) % 3];
	if (n[drop] < 0) [u, v] = [v, u];
	const flat = new Float64Array(corners * 2);
	for (let i = 0; i < corners; i++) {
		flat[i * 2] = p[i * 3 + u] - p[u];
		flat[i * 2 + 1] = p[i * 3 + v] - p[v];
	}
	return flat;
}
