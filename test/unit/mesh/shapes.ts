import type { Rows } from '../../../src/lib/domain/mesh/orient';
import { orient } from '../../../src/lib/domain/mesh/orient';
import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import type { Vec3 } from '../../../src/lib/domain/vec3';

/** Closed shapes with known measures, vertices exactly on the true surface. */

export interface RingSpec {
	/** centre of the ring */
	centre: Vec3;
	/** half axes along x and z */
	a: number;
	b: number;
}

/** Skin over elliptical rings stacked along y, lowest first, closed by a fan to `bottom` and to `top`. */
export function stack(rings: RingSpec[], around: number, bottom: Vec3 | null, top: Vec3 | null): TriMesh {
	const positions: number[] = [];
	const indices: number[] = [];
	for (const { centre, a, b } of rings) {
		for (let j = 0; j < around; j++) {
			const t = (2 * Math.PI * j) / around;
			positions.push(centre[0] + a * Math.cos(t), centre[1], centre[2] + b * Math.sin(t));
		}
	}
	const at = (i: number, j: number): number => i * around + (j % around);
	for (let i = 0; i + 1 < rings.length; i++) {
		for (let j = 0; j < around; j++) {
			indices.push(at(i, j), at(i + 1, j), at(i, j + 1));
			indices.push(at(i, j + 1), at(i + 1, j), at(i + 1, j + 1));
		}
	}
	if (bottom) {
		const c = positions.length / 3;
		positions.push(...bottom);
		for (let j = 0; j < around; j++) indices.push(c, at(0, j), at(0, j + 1));
	}
	if (top) {
		const c = positions.length / 3;
		positions.push(...top);
		for (let j = 0; j < around; j++) indices.push(c, at(rings.length - 1, j + 1), at(rings.length - 1, j));
	}
	return { positions: Float32Array.from(positions), indices: Uint32Array.from(indices) };
}

/** Elliptic cone on the plane y = 0, base half axes a (x) and b (z), apex anywhere above; oblique when not over the middle. */
export function ellipticCone(a: number, b: number, apex: Vec3, around = 240, up = 90): TriMesh {
	const rings = Array.from({ length: up }, (_, i) => {
		const t = i / up;
		return { centre: [apex[0] * t, apex[1] * t, apex[2] * t] as Vec3, a: a * (1 - t), b: b * (1 - t) };
	});
	return stack(rings, around, [0, 0, 0], apex);
}

/** Straight round cone of base radius r and half angle alpha whose tip is a sphere of radius `tip`, tangent to it. */
export function roundedCone(r: number, alpha_rad: number, tip: number, around = 240, up = 160): TriMesh {
	// depth below the sphere's top at which cone and sphere touch
	const touch = tip * (1 - Math.sin(alpha_rad));
	const touchRadius = tip * Math.cos(alpha_rad);
	const height = touch + (r - touchRadius) / Math.tan(alpha_rad);
	const rings: RingSpec[] = [];
	const onCone = Math.round(up * 0.6);
	for (let i = 0; i < onCone; i++) {
		const radius = r + ((touchRadius - r) * i) / onCone;
		rings.push({ centre: [0, (r - radius) / Math.tan(alpha_rad), 0], a: radius, b: radius });
	}
	const onSphere = up - onCone;
	for (let i = 0; i < onSphere; i++) {
		const polar = (Math.PI / 2 - alpha_rad) * (1 - i / onSphere);
		const radius = tip * Math.sin(polar);
		rings.push({ centre: [0, height - tip * (1 - Math.cos(polar)), 0], a: radius, b: radius });
	}
	return stack(rings, around, [0, 0, 0], [0, height, 0]);
}

export function sphere(radius: number, around = 128, up = 64): TriMesh {
	const rings = Array.from({ length: up - 1 }, (_, i) => {
		const polar = (Math.PI * (i + 1)) / up;
		return {
			centre: [0, -radius * Math.cos(polar), 0] as Vec3,
			a: radius * Math.sin(polar),
			b: radius * Math.sin(polar),
		};
	});
	return stack(rings, around, [0, -radius, 0], [0, radius, 0]);
}

/** Ring torus round the y axis. */
export function torus(major: number, minor: number, around = 128, tube = 64): TriMesh {
	const positions: number[] = [];
	const indices: number[] = [];
	for (let i = 0; i < around; i++) {
		const p = (2 * Math.PI * i) / around;
		for (let j = 0; j < tube; j++) {
			const q = (2 * Math.PI * j) / tube;
			const r = major + minor * Math.cos(q);
			positions.push(r * Math.cos(p), minor * Math.sin(q), r * Math.sin(p));
			const at = (k: number, l: number): number => (k % around) * tube + (l % tube);
			indices.push(at(i, j), at(i, j + 1), at(i + 1, j), at(i + 1, j), at(i, j + 1), at(i + 1, j + 1));
		}
	}
	return { positions: Float32Array.from(positions), indices: Uint32Array.from(indices) };
}

/** Box from the origin to (x, y, z), twelve triangles. */
export function box(x: number, y: number, z: number): TriMesh {
	const positions = Float32Array.of(
		...[0, 0, 0, x, 0, 0, x, y, 0, 0, y, 0],
		...[0, 0, z, x, 0, z, x, y, z, 0, y, z],
	);
	const indices = Uint32Array.of(
		...[0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4],
		...[3, 7, 6, 3, 6, 2, 0, 4, 7, 0, 7, 3, 1, 2, 6, 1, 6, 5],
	);
	return { positions, indices };
}

/** Rotation from three angles, radians. */
export function rotation(yaw: number, pitch: number, roll: number): Rows {
	const [cy, sy, cp, sp, cr, sr] = [yaw, pitch, roll].flatMap((x) => [Math.cos(x), Math.sin(x)]) as [
		number,
		number,
		number,
		number,
		number,
		number,
	];
	return [
		[cy * cr + sy * sp * sr, sr * cp, -sy * cr + cy * sp * sr],
		[-cy * sr + sy * sp * cr, cr * cp, sr * sy + cy * sp * cr],
		[sy * cp, -sp, cy * cp],
	];
}

/** The same surface as a raw soup: every triangle with its own corners, in an order set by `seed`. */
export function soup(mesh: TriMesh, seed: number): TriMesh {
	const triangles = mesh.indices.length / 3;
	const order = Array.from({ length: triangles }, (_, t) => t);
	let state = seed >>> 0 || 1;
	for (let i = triangles - 1; i > 0; i--) {
		state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
		const j = state % (i + 1);
		[order[i], order[j]] = [order[j], order[i]];
	}
	const positions = new Float32Array(triangles * 9);
	order.forEach((t, i) => {
		for (let c = 0; c < 3; c++) {
			const v = mesh.indices[t * 3 + c] * 3;
			positions.set(mesh.positions.subarray(v, v + 3), i * 9 + c * 3);
		}
	});
	return { positions, indices: Uint32Array.from({ length: triangles * 3 }, (_, k) => k) };
}

/** Rotated, scaled and moved. */
export function placed(mesh: TriMesh, angles: Vec3, scale: number, move: Vec3): TriMesh {
	const rows = rotation(...angles).map((row) => row.map((x) => x * scale) as unknown as Vec3);
	return orient(mesh, rows as unknown as Rows, move);
}
