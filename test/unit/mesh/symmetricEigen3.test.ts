import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { symmetricEigen3 } from '../../../src/lib/domain/mesh/symmetricEigen3';

const place = fc.double({ min: -50, max: 50, noNaN: true });

describe('symmetricEigen3', () => {
	it('solves A v = l v for any symmetric matrix (seed 42)', () => {
		fc.assert(
			fc.property(fc.tuple(place, place, place, place, place, place), ([xx, yy, zz, xy, xz, yz]) => {
				const { values, vectors } = symmetricEigen3(xx, yy, zz, xy, xz, yz);
				vectors.forEach((v, k) => {
					const image = [
						xx * v[0] + xy * v[1] + xz * v[2],
						xy * v[0] + yy * v[1] + yz * v[2],
						xz * v[0] + yz * v[1] + zz * v[2],
					];
					for (let i = 0; i < 3; i++) expect(image[i]).toBeCloseTo(values[k] * v[i], 8);
				});
				expect(values[0]).toBeGreaterThanOrEqual(values[1]);
				expect(values[1]).toBeGreaterThanOrEqual(values[2]);
			}),
			{ seed: 42, numRuns: 100 },
		);
	});
});
