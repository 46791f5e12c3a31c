import { describe, expect, it } from 'vitest';
import { capSection } from '../../../src/lib/domain/mesh/capSection';
import { section } from '../../../src/lib/domain/mesh/section';
import { ACROSS } from '../../../src/lib/domain/measure/cutSection';
import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { ellipticCone, torus, box, placed } from './shapes';

/** Area of the cap's triangles; all must turn the same way. */
function areaOf(mesh: TriMesh, height: number): number {
	const { points, indices } = capSection(section(mesh, ACROSS, height));
	let sum = 0;
	for (let k = 0; k < indices.length; k += 3) {
		const [a, b, c] = [0, 1, 2].map((n) => indices[k + n] * 2);
		const twice =
			(points[b] - points[a]) * (points[c + 1] - points[a + 1]) -
			(points[b + 1] - points[a + 1]) * (points[c] - points[a]);
		expect(twice).toBeGreaterThan(-1e-6);
		sum += twice / 2;
	}
	return sum;
}

describe('capSection', () => {
	it('fills an ellipse', () => {
		// half axes at half height are half those of the base: area pi * 3 * 2
		expect(areaOf(ellipticCone(6, 4, [0, 20, 0]), 10)).toBeCloseTo(Math.PI * 6, 1);
	});

	it('leaves the hole of a ring open', () => {
		// a torus of radii 10 and 3 cut through its middle: ring from 7 to 13
		const expected = Math.PI * (13 ** 2 - 7 ** 2);
		expect(areaOf(torus(10, 3), 0.001) / expected).toBeCloseTo(1, 2);
	});

	it('fills pieces that lie apart', () => {
		const one = box(2, 5, 3);
		const other = placed(box(1, 5, 1), [0, 0, 0], 1, [10, 0, 0]);
		const both: TriMesh = {
			positions: Float32Array.of(...one.positions, ...other.positions),
			indices: Uint32Array.of(...one.indices, ...other.indices.map((i) => i + 8)),
		};
		expect(areaOf(both, 2.5)).toBeCloseTo(7, 5);
	});

	it('has nothing to fill where the plane misses', () => {
		expect(capSection([]).indices).toHaveLength(0);
	});
});
