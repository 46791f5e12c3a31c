import type { Vec3 } from '../vec3';

export interface FittedSphere {
	centre: Vec3;
	radius: number;
	/** weighted root mean square distance of the points from the sphere */
	rms: number;
}

/** Solves a symmetric 4x4 system, given by its lower triangle, in place by Gaussian elimination with pivoting; null when singular. */
function solve4(m: Float64Array, r: Float64Array): Float64Array | null {
	for (let i = 0; i < 4; i++) for (let k = i + 1; k < 4; k++) m[i * 4 + k] = m[k * 4 + i];
	for (let i = 0; i < 4; i++) {
		let pivot = i;
		for (let k = i + 1; k < 4; k++) if (Math.abs(m[k * 4 + i]) > Math.abs(m[pivot * 4 + i])) pivot = k;
		if (!(Math.abs(m[pivot * 4 + i]) > 1e-14)) return null;
		if (pivot !== i) {
			for (let c = 0; c < 4; c++) {
				const keep = m[i * 4 + c];
				m[i * 4 + c] = m[pivot * 4 + c];
				m[pivot * 4 + c] = keep;
			}
			const keep = r[i];
			r[i] = r[pivot];
			r[pivot] = keep;
		}
		for (let k = i + 1; k < 4; k++) {
			const f = m[k * 4 + i] / m[i * 4 + i];
			for (let c = i; c < 4; c++) m[k * 4 + c] = m[k * 4 + c] - f * m[i * 4 + c];
			r[k] = r[k] - f * r[i];
		}
	}
	for (let i = 3; i >= 0; i--) {
		let s = r[i];
		for (let c = i + 1; c < 4; c++) s -= m[i * 4 + c] * r[c];
		r[i] = s / m[i * 4 + i];
	}
	return r;
}

/**
 * Sphere with the least weighted squared distance to points (x, y, z triples). The algebraic fit gives the start,
 * a few Gauss-Newton steps on the true distance remove its bias towards small radii on a shallow cap.
 * Null for fewer than four points or points in one plane.
 */
export function fitSphere(points: Float64Array, weights: Float64Array): FittedSphere | null {
	const n = weights.length;
	if (n < 4) return null;
	let total = 0;
	let ox = 0;
	let oy = 0;
	let oz = 0;
	for (let i = 0; i < n; i++) {
		total += weights[i];
		ox += weights[i] * points[i * 3];
		oy += weights[i] * points[i * 3 + 1];
		oz += weights[i] * points[i * 3 + 2];
	}
	if (!(total > 0)) return null;
	ox /= total;
	oy /= total;
	oz /= total;
	let size = 0;
	for (let i = 0; i < n; i++) {
		size = Math.max(size, Math.hypot(points[i * 3] - ox, points[i * 3 + 1] - oy, points[i * 3 + 2] - oz));
	}
	if (!(size > 0)) return null;
	const m = new Float64Array(16);
	const r = new Float64Array(4);
	const accumulate = (a: number, b: number, c: number, value: number, w: number): void => {
		// lower triangle of the products of (a, b, c, 1)
		m[0] += w * a * a;
		m[4] += w * b * a;
		m[5] += w * b * b;
		m[8] += w * c * a;
		m[9] += w * c * b;
		m[10] += w * c * c;
		m[12] += w * a;
		m[13] += w * b;
		m[14] += w * c;
		m[15] += w;
		r[0] += w * a * value;
		r[1] += w * b * value;
		r[2] += w * c * value;
		r[3] += w * value;
	};
	// |p|^2 = 2 c.p + (R^2 - |c|^2), in units of the cloud's own size
	for (let i = 0; i < n; i++) {
		const x = (points[i * 3] - ox) / size;
		const y = (points[i * 3 + 1] - oy) / size;
		const z = (points[i * 3 + 2] - oz) / size;
		accumulate(2 * x, 2 * y, 2 * z, x * x + y * y + z * z, weights[i] / total);
	}
	const first = solve4(m, r);
	if (!first) return null;
	let cx = first[0];
	let cy = first[1];
	let cz = first[2];
	let radius = Math.sqrt(Math.max(0, first[3] + cx * cx + cy * cy + cz * cz));
	let rms = 0;
	for (let step = 0; step < 8; step++) {
		m.fill(0);
		r.fill(0);
		rms = 0;
		for (let i = 0; i < n; i++) {
			const x = (points[i * 3] - ox) / size - cx;
			const y = (points[i * 3 + 1] - oy) / size - cy;
			const z = (points[i * 3 + 2] - oz) / size - cz;
			const d = Math.sqrt(x * x + y * y + z * z);
			if (!(d > 0)) continue;
			const w = weights[i] / total;
			rms += w * (d - radius) ** 2;
			accumulate(x / d, y / d, z / d, d - radius, w);
		}
		const change = solve4(m, r);
		if (!change) break;
		cx += change[0];
		cy += change[1];
		cz += change[2];
		radius += change[3];
		if (Math.hypot(change[0], change[1], change[2], change[3]) < 1e-9 * radius) break;
	}
	if (!(radius > 0) || !Number.isFinite(radius)) return null;
	return {
		centre: [ox + cx * size, oy + cy * size, oz + cz * size],
		radius: radius * size,
		rms: Math.sqrt(rms) * size,
	};
}
