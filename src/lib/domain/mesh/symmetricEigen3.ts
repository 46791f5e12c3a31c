import type { Vec3 } from '../vec3';

export interface Eigen3 {
	/** largest first */
	values: Vec3;
	/** unit vectors, one per value, right-handed */
	vectors: readonly [Vec3, Vec3, Vec3];
}

/** Eigenvalues and vectors of the symmetric matrix [[xx,xy,xz],[xy,yy,yz],[xz,yz,zz]] by Jacobi rotations. */
export function symmetricEigen3(
	xx: number,
	yy: number,
	zz: number,
	xy: number,
	xz: number,
	yz: number,
): Eigen3 {
	const m = [
		[xx, xy, xz],
		[xy, yy, yz],
		[xz, yz, zz],
	];
	const q = [
		[1, 0, 0],
		[0, 1, 0],
		[0, 0, 1],
	];
	for (let sweep = 0; sweep < 32; sweep++) {
		const off = Math.abs(m[0][1]) + Math.abs(m[0][2]) + Math.abs(m[1][2]);
		const on = Math.abs(m[0][0]) + Math.abs(m[1][1]) + Math.abs(m[2][2]);
		if (!(off > 1e-15 * on)) break;
		for (let i = 0; i < 2; i++) {
			for (let j = i + 1; j < 3; j++) {
				const mij = m[i][j];
				if (mij === 0) continue;
				const theta = (m[j][j] - m[i][i]) / (2 * mij);
				const t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
				const c = 1 / Math.sqrt(t * t + 1);
				const s = t * c;
				for (let k = 0; k < 3; k++) {
					const a = m[k][i];
					const b = m[k][j];
					m[k][i] = c * a - s * b;
					m[k][j] = s * a + c * b;
				}
				for (let k = 0; k < 3; k++) {
					const a = m[i][k];
					const b = m[j][k];
					m[i][k] = c * a - s * b;
					m[j][k] = s * a + c * b;
					const qa = q[k][i];
					const qb = q[k][j];
					q[k][i] = c * qa - s * qb;
					q[k][j] = s * qa + c * qb;
				}
			}
		}
	}
	const order = [0, 1, 2].sort((a, b) => m[b][b] - m[a][a]);
	const column = (k: number): Vec3 => [q[0][k], q[1][k], q[2][k]];
	const e0 = column(order[0]);
	const e1 = column(order[1]);
	const e2: Vec3 = [
		e0[1] * e1[2] - e0[2] * e1[1],
		e0[2] * e1[0] - e0[0] * e1[2],
		e0[0] * e1[1] - e0[1] * e1[0],
	];
	return {
		values: [m[order[0]][order[0]], m[order[1]][order[1]], m[order[2]][order[2]]],
		vectors: [e0, e1, e2],
	};
}
