import { describe, expect, it } from 'vitest';
import { principalAxes } from '../../../src/lib/domain/mesh/principalAxes';
import { placed, rotation, sphere, stack } from './shapes';

describe('principalAxes', () => {
	it('of a sphere are alike, r^2/3 each', () => {
		const { variances } = principalAxes(placed(sphere(6, 64, 32), [1, 2, 3], 1, [100, 50, -20]));
		for (const v of variances) expect(v / 12).toBeCloseTo(1, 1);
	});

	it('lead along a tube of length h: h^2/12, against r^2/2', () => {
		const rings = Array.from({ length: 31 }, (_, i) => ({ centre: [0, i, 0] as const, a: 4, b: 4 }));
		const rows = rotation(0.4, 1.1, 2.2);
		const tube = placed(stack(rings, 90, null, null), [0.4, 1.1, 2.2], 1, [9, 9, 9]);
		const { axes, variances } = principalAxes(tube);
		expect(variances[0] / (900 / 12)).toBeCloseTo(1, 3);
		expect(variances[1] / 8).toBeCloseTo(1, 2);
		expect(Math.abs(axes[0][0] * rows[0][1] + axes[0][1] * rows[1][1] + axes[0][2] * rows[2][1])).toBeCloseTo(
			1,
			5,
		);
	});
});
