import { describe, expect, it } from 'vitest';
import { fitPlane } from '../../../src/lib/domain/mesh/fitPlane';
import { rotation } from './shapes';

describe('fitPlane', () => {
	it('gives the plane of points on it and half the scatter of pairs beside it', () => {
		const n = rotation(0.3, 0.7, 1.9)[1];
		const [u, , w] = rotation(0.3, 0.7, 1.9);
		const points: number[] = [];
		for (let i = 0; i < 8; i++) {
			for (let j = 0; j < 8; j++) {
				const off = (i + j) % 2 === 0 ? 0.1 : -0.1;
				for (let k = 0; k < 3; k++) points.push(7 + i * u[k] + j * 2 * w[k] + off * n[k]);
			}
		}
		const plane = fitPlane(points);
		expect(Math.abs(plane.normal[0] * n[0] + plane.normal[1] * n[1] + plane.normal[2] * n[2])).toBeCloseTo(
			1,
			4,
		);
		expect(plane.rms).toBeCloseTo(0.1, 3);
	});
});
