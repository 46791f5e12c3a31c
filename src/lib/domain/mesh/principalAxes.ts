import type { Vec3 } from '../vec3';
import { symmetricEigen3 } from './symmetricEigen3';
import type { TriMesh } from './triMesh';

export interface PrincipalAxes {
	centroid: Vec3;
	/** variance of the surface along each axis, largest first */
	variances: Vec3;
	/** unit, right-handed; signs are arbitrary */
	axes: readonly [Vec3, Vec3, Vec3];
	/** covariance of the surface: xx, yy, zz, xy, xz, yz */
	covariance: readonly [number, number, number, number, number, number];
}

/** Principal axes of the surface, each triangle weighted by its area (so uneven meshing does not matter). */
export function principalAxes(mesh: TriMesh): PrincipalAxes {
	const { positions: p, indices } = mesh;
	const x0 = p[0] ?? 0;
	const y0 = p[1] ?? 0;
	const z0 = p[2] ?? 0;
	let w = 0;
	let mx = 0;
	let my = 0;
	let mz = 0;
	let xx = 0;
	let yy = 0;
	let zz = 0;
	let xy = 0;
	let xz = 0;
	let yz = 0;
	for (let k = 0; k < indices.length; k += 3) {
		const a = indices[k] * 3;
		const b = indices[k + 1] * 3;
		const c = indices[k + 2] * 3;
		const ax = p[a] - x0;
		const ay = p[a + 1] - y0;
		const az = p[a + 2] - z0;
		const bx = p[b] - x0;
		const by = p[b + 1] - y0;
		const bz = p[b + 2] - z0;
		const cx = p[c] - x0;
		const cy = p[c + 1] - y0;
		const cz = p[c + 2] - z0;
		const nx = (by - ay) * (cz - az) - (bz - az) * (cy - ay);
		const ny = (bz - az) * (cx - ax) - (bx - ax) * (cz - az);
		const nz = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
		const area = Math.sqrt(nx * nx + ny * ny + nz * nz);
		if (!(area > 0)) continue;
		const sx = ax + bx + cx;
		const sy = ay + by + cy;
		const sz = az + bz + cz;
		w += area;
		mx += (area * sx) / 3;
		my += (area * sy) / 3;
		mz += (area * sz) / 3;
		// mean of a product of coordinates over a triangle: (sum * sum + products of the corners) / 12
		xx += (area * (sx * sx + ax * ax + bx * bx + cx * cx)) / 12;
		yy += (area * (sy * sy + ay * ay + by * by + cy * cy)) / 12;
		zz += (area * (sz * sz + az * az + bz * bz + cz * cz)) / 12;
		xy += (area * (sx * sy + ax * ay + bx * by + cx * cy)) / 12;
		xz += (area * (sx * sz + ax * az + bx * bz + cx * cz)) / 12;
		yz += (area * (sy * sz + ay * az + by * bz + cy * cz)) / 12;
	}
	if (!(w > 0)) w = 1;
	mx /= w;
	my /= w;
	mz /= w;
	const covariance = [
		xx / w - mx * mx,
		yy / w - my * my,
		zz / w - mz * mz,
		xy / w - mx * my,
		xz / w - mx * mz,
		yz / w - my * mz,
	] as const;
	const eigen = symmetricEigen3(...covariance);
	return {
		centroid: [x0 + mx, y0 + my, z0 + mz],
		variances: eigen.values,
		axes: eigen.vectors,
		covariance,
	};
}
