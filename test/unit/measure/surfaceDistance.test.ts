import { describe, expect, it } from 'vitest';
import { surfaceDistance } from '../../../src/lib/domain/measure/surfaceDistance';
import { box } from '../mesh/shapes';

describe('surfaceDistance', () => {
	it('is taken to faces, edges and corners of a box, whichever is nearest', () => {
		const mesh = box(10, 10, 10);
		expect(surfaceDistance(mesh, [5, 5, 13])).toBeCloseTo(3, 6);
		expect(surfaceDistance(mesh, [5, 5, 9])).toBeCloseTo(1, 6);
		expect(surfaceDistance(mesh, [13, 5, 14])).toBeCloseTo(5, 6);
		expect(surfaceDistance(mesh, [12, 12, 11])).toBeCloseTo(3, 6);
		expect(surfaceDistance(mesh, [3, 10, 4])).toBe(0);
	});

	it('is infinite without triangles', () => {
		expect(surfaceDistance({ positions: new Float32Array(0), indices: new Uint32Array(0) }, [0, 0, 0])).toBe(
			Infinity,
		);
	});
});
