import type { Vec3 } from '../vec3';
import type { TriMesh } from './triMesh';

export interface Bounds {
	min: Vec3;
	max: Vec3;
	/** length of the box's diagonal */
	diagonal: number;
}

/** Axis-aligned box of the vertices, mesh units. A mesh without vertices gives a box of size 0 at the origin. */
export function bounds(mesh: Pick<TriMesh, 'positions'>): Bounds {
	const p = mesh.positions;
	if (p.length < 3) return { min: [0, 0, 0], max: [0, 0, 0], diagonal: 0 };
	let x0 = Infinity;
	let y0 = Infinity;
	let z0 = Infinity;
	let x1 = -Infinity;
	let y1 = -Infinity;
	let z1 = -Infinity;
	for (let i = 0; i < p.length; i += 3) {
		const x = p[i];
		const y = p[i + 1];
		const z = p[i + 2];
		if (x < x0) x0 = x;
		if (x > x1) x1 = x;
		if (y < y0) y0 = y;
		if (y > y1) y1 = y;
		if (z < z0) z0 = z;
		if (z > z1) z1 = z;
	}
	return { min: [x0, y0, z0], max: [x1, y1, z1], diagonal: Math.hypot(x1 - x0, y1 - y0, z1 - z0) };
}
