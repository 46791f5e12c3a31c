import { describe, expect, it } from 'vitest';
import { checkMesh } from '../../../src/lib/domain/measure/checkMesh';

const triangle = Float32Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0);

describe('checkMesh', () => {
	it('lets a triangle pass', () => {
		expect(checkMesh({ positions: triangle, indices: Uint32Array.of(0, 1, 2) })).toBeNull();
	});

	it.each([
		['no triangles', triangle, [], 'empty'],
		['no vertices', new Float32Array(0), [0, 1, 2], 'empty'],
		['NaN', Float32Array.of(0, 0, 0, 1, NaN, 0, 0, 1, 0), [0, 1, 2], 'not-a-number'],
		['an infinite coordinate', Float32Array.of(0, 0, 0, 1, 0, 0, 0, -Infinity, 0), [0, 1, 2], 'not-a-number'],
		['an index out of range', triangle, [0, 1, 3], 'bad-index'],
		['half a triangle', triangle, [0, 1, 2, 0], 'bad-index'],
	])('refuses %s', (_, positions, indices, code) => {
		const problem = checkMesh({ positions, indices: Uint32Array.from(indices) });
		expect(problem?.code).toBe(code);
		expect(problem?.message).toMatch(/\.$/);
	});
});
