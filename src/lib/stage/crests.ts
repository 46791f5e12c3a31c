/** How far a point of the enamel belongs to a carina or a ridge, with soft borders. */
import { regionIndex } from '../domain/mesh/triMesh';

/** Rounds of smoothing: each spreads a border by about one triangle. */
const ROUNDS = 3;

/**
 * Two bytes per vertex, 255 = wholly carina, wholly ridge: regions are told by triangle, and a border drawn along
 * triangles is a saw. Outside the enamel 0.
 *
 * @param region index into REGIONS per vertex
 * @param places number of the place where a vertex stands, see places.ts
 */
export const crests = (
	region: ArrayLike<number>,
	places: { of: Uint32Array; count: number },
	indices: ArrayLike<number>,
): Uint8Array => {
	const { of, count } = places;
	const enamelTo = regionIndex('ridge');
	const kinds = [regionIndex('carina'), regionIndex('ridge')];
	const out = new Uint8Array(region.length * 2);
	const sum = new Float32Array(count * 2);
	const n = new Float32Array(count);
	let any = false;
	for (let k = 0; k < indices.length; k++) {
		const own = region[indices[k]];
		if (own > enamelTo) continue;
		const at = of[indices[k]];
		n[at]++;
		const kind = kinds.indexOf(own);
		if (kind < 0) continue;
		any = true;
		sum[at * 2 + kind]++;
	}
	if (!any) return out;
	let now = sum.map((value, i) => value / Math.max(1, n[i >> 1]));
	for (let round = 0; round < ROUNDS; round++) {
		const next = new Float32Array(count * 2);
		const weight = new Float32Array(count);
		for (let t = 0; t + 2 < indices.length; t += 3) {
			if (region[indices[t]] > enamelTo) continue;
			const [a, b, c] = [of[indices[t]], of[indices[t + 1]], of[indices[t + 2]]];
			for (let kind = 0; kind < 2; kind++) {
				const mean = (now[a * 2 + kind] + now[b * 2 + kind] + now[c * 2 + kind]) / 3;
				next[a * 2 + kind] += mean;
				next[b * 2 + kind] += mean;
				next[c * 2 + kind] += mean;
			}
			weight[a]++;
			weight[b]++;
			weight[c]++;
		}
		now = next.map((value, i) => value / Math.max(1, weight[i >> 1]));
	}
	for (let i = 0; i < region.length; i++) {
		if (region[i] > enamelTo) continue;
		for (let kind = 0; kind < 2; kind++) out[i * 2 + kind] = Math.round(255 * now[of[i] * 2 + kind]);
	}
	return out;
};
