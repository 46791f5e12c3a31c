import { REGIONS, type Region, type TriMesh } from '../mesh/triMesh';
import type { Vec3 } from '../vec3';

/** One closed line round the tooth: a point for each column, in order of angle. */
export interface Ring {
	/** x, y, z per column, mm */
	points: Float64Array;
	/** region of the band from this ring to the next */
	below: Region;
	/** region that a column's point belongs to instead, where a feature stands out */
	tags?: (Region | null)[];
}

/**
 * Joins rings, in order from the tip over the outside, round the end and up the inside, into one closed surface
 * between two poles. Outward when angles run from +x to +z and the first pole is the tip.
 */
export function skin(top: Vec3, topRegion: Region, rings: readonly Ring[], bottom: Vec3): TriMesh {
	const n = rings[0].points.length / 3;
	const positions = new Float32Array(3 * (n * rings.length + 2));
	positions.set(top, 0);
	rings.forEach((ring, i) => positions.set(ring.points, 3 * (1 + i * n)));
	const last = 1 + rings.length * n;
	positions.set(bottom, 3 * last);

	const indices: number[] = [];
	const regions: number[] = [];
	const add = (p: number, q: number, r: number, region: Region): void => {
		indices.push(p, q, r);
		regions.push(REGIONS.indexOf(region));
	};
	for (let j = 0; j < n; j++) add(0, 1 + ((j + 1) % n), 1 + j, topRegion);
	const gap = (p: number, q: number): number => {
		const dx = positions[3 * p] - positions[3 * q];
		const dy = positions[3 * p + 1] - positions[3 * q + 1];
		const dz = positions[3 * p + 2] - positions[3 * q + 2];
		return dx * dx + dy * dy + dz * dz;
	};
	for (let i = 0; i + 1 < rings.length; i++) {
		const { below, tags: upper } = rings[i];
		const lower = rings[i + 1].tags;
		for (let j = 0; j < n; j++) {
			const k = (j + 1) % n;
			const [a, b] = [1 + i * n + j, 1 + i * n + k];
			const [c, d] = [a + n, b + n];
			const [ta, tb] = [upper?.[j] ?? null, upper?.[k] ?? null];
			const [tc, td] = [lower?.[j] ?? null, lower?.[k] ?? null];
			// the shorter diagonal gives the better-shaped pair
			if (gap(a, d) < gap(b, c)) {
				add(a, b, d, agreed(ta, tb, td) ?? below);
				add(a, d, c, agreed(ta, td, tc) ?? below);
			} else {
				add(a, b, c, agreed(ta, tb, tc) ?? below);
				add(b, d, c, agreed(tb, td, tc) ?? below);
			}
		}
	}
	const end = 1 + (rings.length - 1) * n;
	for (let j = 0; j < n; j++) add(end + j, end + ((j + 1) % n), last, rings[rings.length - 1].below);
	return { positions, indices: new Uint32Array(indices), regions: new Uint8Array(regions) };
}

/** A triangle belongs to a feature when all its corners do: borders then run along rows and columns. */
const agreed = (p: Region | null, q: Region | null, r: Region | null): Region | null =>
	p === q && p === r ? p : null;
