import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planeFrame } from '../../../src/lib/domain/mesh/planeFrame';
import { vec3, type Vec3 } from '../../../src/lib/domain/vec3';

const unit = fc
	.tuple(fc.double({ min: -1, max: 1 }), fc.double({ min: -1, max: 1 }), fc.double({ min: -1, max: 1 }))
	.filter((v): v is [number, number, number] => Math.hypot(...v) > 0.01);

describe('planeFrame', () => {
	it('is right-handed, square and of unit length, whatever the directions (seed 92)', () => {
		fc.assert(
			fc.property(unit, fc.option(unit, { nil: undefined }), (normal, along) => {
				const f = planeFrame([1, 2, 3], normal, along);
				for (const a of [f.u, f.v, f.normal]) expect(vec3.norm(a)).toBeCloseTo(1, 12);
				expect(vec3.dot(f.u, f.v)).toBeCloseTo(0, 9);
				expect(vec3.distance(vec3.cross(f.u, f.v), f.normal)).toBeLessThan(1e-9);
				expect(vec3.dot(f.normal, normal)).toBeGreaterThan(0);
				if (along) expect(vec3.dot(f.u, along)).toBeGreaterThan(-1e-9);
			}),
			{ seed: 92, numRuns: 200 },
		);
	});

	it('finds a direction when the one given points along the normal', () => {
		const up: Vec3 = [0, 2, 0];
		expect(vec3.dot(planeFrame([0, 0, 0], up, up).u, up)).toBeCloseTo(0, 12);
	});
});
