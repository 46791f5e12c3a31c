import type { Vec3 } from '../vec3';
import { symmetricEigen3 } from './symmetricEigen3';

export interface FittedPlane {
	point: Vec3;
	/** unit; sign arbitrary */
	normal: Vec3;
	/** root mean square distance of the points from the plane */
	rms: number;
}

/** Plane with the least squared distance to points (x, y, z triples); at least three, not all on one line. */
export function fitPlane(points: ArrayLike<number>): FittedPlane {
	const n = points.length / 3;
	let mx = 0;
	let my = 0;
	let mz = 0;
	for (let i = 0; i < points.length; i += 3) {
		mx += points[i];
		my += points[i + 1];
		mz += points[i + 2];
	}
	mx /= n;
	my /= n;
	mz /= n;
	let xx = 0;
	let yy = 0;
	let zz = 0;
	let xy = 0;
	let xz = 0;
	let yz = 0;
	for (let i = 0; i < points.length; i += 3) {
		const x = points[i] - mx;
		const y = points[i + 1] - my;
		const z = points[i + 2] - mz;
		xx += x * x;
		yy += y * y;
		zz += z * z;
		xy += x * y;
		xz += x * z;
		yz += y * z;
	}
	const eigen = symmetricEigen3(xx, yy, zz, xy, xz, yz);
	return {
		point: [mx, my, mz],
		normal: eigen.vectors[2],
		rms: Math.sqrt(Math.max(0, eigen.values[2]) / n),
	};
}
