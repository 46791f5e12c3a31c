import { describe, expect, it } from 'vitest';
import { tipPoint } from '../../../src/lib/domain/measure/tipPoint';
import { planeFrame } from '../../../src/lib/domain/mesh/planeFrame';
import { section } from '../../../src/lib/domain/mesh/section';
import { sectionMeasure } from '../../../src/lib/domain/mesh/sectionMeasure';
import { roundedCone, rotation, placed } from '../mesh/shapes';
import type { Vec3 } from '../../../src/lib/domain/vec3';

describe('tipPoint', () => {
	it('is the middle of the cap of a cone that leans as a whole, not its highest point', () => {
		const cone = roundedCone(10, 0.2, 3);
		const p = cone.positions;
		const tip: Vec3 = [0, p[p.length - 2], 0];
		// tipped by 0.5 rad about z: the highest point of the cap is now beside its middle
		const rows = rotation(0, 0, 0.5);
		const leaning = placed(cone, [0, 0, 0.5], 1, [0, 0, 0]);
		const turned = rows.map((r) => r[1] * tip[1]) as unknown as Vec3;
		const frame = planeFrame([0, 0, 0], [0, 1, 0], [1, 0, 0]);
		const q = leaning.positions;
		let top = 0;
		for (let i = 0; i < q.length; i += 3) if (q[i + 1] > q[top + 1]) top = i;
		const apex: Vec3 = [q[top], q[top + 1], q[top + 2]];
		expect(Math.hypot(apex[0] - turned[0], apex[1] - turned[1])).toBeGreaterThan(0.5);
		const below = sectionMeasure(section(leaning, frame, apex[1] * 0.8));
		const found = tipPoint(leaning, frame, apex, 6, below);
		expect(Math.hypot(found[0] - turned[0], found[1] - turned[1], found[2] - turned[2])).toBeLessThan(0.3);
	});

	it('is the apex itself where nothing is known below', () => {
		const frame = planeFrame([0, 0, 0], [0, 1, 0]);
		expect(tipPoint(roundedCone(10, 0.2, 3), frame, [1, 2, 3], 6, null)).toEqual([1, 2, 3]);
	});
});
