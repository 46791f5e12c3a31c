import { describe, expect, it } from 'vitest';
import { isClosed } from '../../../src/lib/domain/tooth/isClosed';

const mesh = (indices: number[]) => ({
	positions: new Float32Array([0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1]),
	indices: new Uint32Array(indices),
});
const tetrahedron = [0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3];

describe('isClosed', () => {
	it('accepts a tetrahedron', () => {
		expect(isClosed(mesh(tetrahedron))).toBe(true);
	});

	it('refuses a missing, a turned and a doubled triangle', () => {
		expect(isClosed(mesh(tetrahedron.slice(3)))).toBe(false);
		expect(isClosed(mesh([0, 1, 2, ...tetrahedron.slice(3)]))).toBe(false);
		expect(isClosed(mesh([...tetrahedron, ...tetrahedron]))).toBe(false);
	});
});
