import { fitSphere, type FittedSphere } from '../mesh/fitSphere';
import type { TriMesh } from '../mesh/triMesh';
import type { Vec3 } from '../vec3';

/** the cap reaches at most this many radii from the apex, in a straight line (about 47 degrees round the sphere) */
const REACH = 0.8;
const SHRINK = 1.2;
const FLAT: FittedSphere = { centre: [0, 0, 0], radius: Infinity, rms: 0 };
const FEWEST_POINTS = 14;
const MOST_POINTS = 1500;
/** fits over a cap and over one 1.7 times smaller must agree this well */
const AGREEMENT = 0.08;
/** the cap's points, and the apex itself, may leave the sphere by this share of the cap's own height */
const FIT = 0.12;

/**
 * Radius of the sphere that best fits the apex. Spheres are fitted to ever smaller caps round the apex until the cap
 * lies within the sphere's own curve and a smaller cap gives the same radius. On a sharp cone the radius keeps
 * shrinking with the cap until the mesh has no more points: then the answer is null.
 *
 * @param largest_mm where to begin, about half the crown
 */
export function tipRadius(mesh: TriMesh, apex: Vec3, largest_mm: number): number | null {
	const { positions: p, indices } = mesh;
	const { points, weights, distances } = pointsNear(p, indices, apex, largest_mm);
	const fit = (reach: number): FittedSphere | null => {
		let low = 0;
		let high = distances.length;
		while (low < high) {
			const middle = (low + high) >> 1;
			if (distances[middle] <= reach) low = middle + 1;
			else high = middle;
		}
		if (low < FEWEST_POINTS) return null;
		// a dense scan has more points than a fit needs: every n-th will do
		const stride = Math.ceil(low / MOST_POINTS);
		const count = Math.floor(low / stride);
		const some = new Float64Array(count * 3);
		const their = new Float64Array(count);
		for (let i = 0; i < count; i++) {
			const from = i * stride;
			some[i * 3] = points[from * 3];
			some[i * 3 + 1] = points[from * 3 + 1];
			some[i * 3 + 2] = points[from * 3 + 2];
			their[i] = weights[from];
		}
		return fitSphere(some, their) ?? FLAT;
	};
	for (let reach = largest_mm; ; reach /= SHRINK) {
		const sphere = fit(reach);
		// too few points to ask with a smaller cap: the mesh does not resolve the tip
		const smaller = sphere && fit(reach / 1.7);
		if (!smaller) break;
		const { radius, centre, rms } = sphere;
		if (reach > REACH * radius) continue;
		const capHeight = (reach * reach) / (2 * radius);
		const offApex = Math.abs(Math.hypot(centre[0], centre[1], centre[2]) - radius);
		if (
			radius < 3 * largest_mm &&
			rms < FIT * capHeight &&
			offApex < 2 * FIT * capHeight &&
			Math.abs(smaller.radius / radius - 1) <= AGREEMENT
		) {
			return radius;
		}
	}
	return null;
}

/** Vertices within `reach` of the apex, nearest first, relative to it, each with its share of the surface. */
function pointsNear(
	p: Float32Array,
	indices: Uint32Array,
	apex: Vec3,
	reach: number,
): { points: Float64Array; weights: Float64Array; distances: Float64Array } {
	const count = p.length / 3;
	const all = new Float64Array(count);
	let n = 0;
	for (let v = 0; v < count; v++) {
		const d = Math.hypot(p[v * 3] - apex[0], p[v * 3 + 1] - apex[1], p[v * 3 + 2] - apex[2]);
		all[v] = d;
		if (d <= reach) n++;
	}
	const near = new Uint32Array(n);
	n = 0;
	for (let v = 0; v < count; v++) if (all[v] <= reach) near[n++] = v;
	near.sort((a, b) => all[a] - all[b]);
	const area = new Float64Array(count);
	for (let k = 0; k < indices.length; k += 3) {
		if (all[indices[k]] > reach && all[indices[k + 1]] > reach && all[indices[k + 2]] > reach) continue;
		const a = indices[k] * 3;
		const b = indices[k + 1] * 3;
		const c = indices[k + 2] * 3;
		const ux = p[b] - p[a];
		const uy = p[b + 1] - p[a + 1];
		const uz = p[b + 2] - p[a + 2];
		const vx = p[c] - p[a];
		const vy = p[c + 1] - p[a + 1];
		const vz = p[c + 2] - p[a + 2];
		const x = uy * vz - uz * vy;
		const y = uz * vx - ux * vz;
		const z = ux * vy - uy * vx;
		const third = Math.sqrt(x * x + y * y + z * z) / 6;
		area[indices[k]] += third;
		area[indices[k + 1]] += third;
		area[indices[k + 2]] += third;
	}
	const points = new Float64Array(n * 3);
	for (let i = 0; i < n; i++) {
		const v = near[i] * 3;
		points[i * 3] = p[v] - apex[0];
		points[i * 3 + 1] = p[v + 1] - apex[1];
		points[i * 3 + 2] = p[v + 2] - apex[2];
	}
	return {
		points,
		weights: Float64Array.from(near, (v) => area[v]),
		distances: Float64Array.from(near, (v) => all[v]),
	};
}
