import { ScanFault } from './scanProblem';

const STRIP = 5;
const FAN = 6;

/**
 * Corners of a glTF primitive as separate triangles. Order of strips and fans: glTF 2.0 specification, 3.7.2.1.
 * A number of corners that does not come out even means that some are missing.
 */
export function asTriangles(order: Uint32Array, mode: number): Uint32Array {
	if (mode !== STRIP && mode !== FAN) {
		if (order.length % 3 !== 0) {
			throw new ScanFault('count-lies', `Its triangles have ${order.length} corners, not three each.`);
		}
		return order;
	}
	const count = Math.max(0, order.length - 2);
	const out = new Uint32Array(count * 3);
	for (let i = 0; i < count; i++) {
		const odd = i % 2;
		const corners = mode === STRIP ? [i, i + 1 + odd, i + 2 - odd] : [i + 1, i + 2, 0];
		for (let k = 0; k < 3; k++) out[i * 3 + k] = order[corners[k]];
	}
	return out;
}
