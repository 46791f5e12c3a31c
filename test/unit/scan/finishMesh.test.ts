import { describe, expect, it } from 'vitest';
import { bounds } from '../../../src/lib/domain/mesh/bounds';
import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { volume } from '../../../src/lib/domain/mesh/volume';
import { finishMesh } from '../../../src/lib/server/scan/finishMesh';
import type { RawMesh } from '../../../src/lib/server/scan/rawMesh';
import { isLoose } from '../../../src/lib/server/scan/isLoose';
import { ellipticCone, placed, soup, sphere } from '../mesh/shapes';

const cone = ellipticCone(4, 3, [1, 20, 0], 48, 20);
const reversed = (mesh: TriMesh): TriMesh => ({ ...mesh, indices: mesh.indices.slice().reverse() });
/** without the fan that closes the base: the last of the triangles but those of the tip */
const open = (mesh: TriMesh): TriMesh => ({
	...mesh,
	indices: mesh.indices.filter((_, k) => {
		const at = k - (k % 3);
		return !mesh.indices
			.subarray(at, at + 3)
			.some((i) => mesh.positions[i * 3 + 1] === 0 && mesh.positions[i * 3] === 0);
	}),
});
const codes = (raw: RawMesh, mmPerUnit = 1): string[] =>
	finishMesh(
		{ ...raw, positions: raw.positions.slice(), indices: raw.indices!.slice() },
		mmPerUnit,
		false,
	).warnings.map(({ code }) => code);

describe('finishMesh', () => {
	it('turns a surface round that faces inwards, closed or open, wherever it lies', () => {
		for (const shape of [cone, open(cone), sphere(5, 24, 12)]) {
			for (const move of [
				[0, 0, 0],
				[70, -50, 60],
			] as [number, number, number][]) {
				const right = placed(shape, [0.4, 1, 2], 1, move);
				expect(codes(right)).toEqual([]);
				expect(codes(reversed(right))).toEqual(['inside-out']);
				const { mesh } = finishMesh(reversed(right), 1, false);
				expect(volume(mesh, bounds(right).min) * volume(right, bounds(right).min)).toBeGreaterThan(0);
			}
		}
	});

	it('says when a size is unlikely for a tooth, by its longest side in millimetres', () => {
		// bounds: half a millimetre and 400 mm (common practice, no source); the cone is 20 high
		expect(codes(cone, 1)).toEqual([]);
		expect(codes(cone, 0.024)).toEqual(['unlikely-size']);
		expect(codes(cone, 0.026)).toEqual([]);
		expect(codes(cone, 19.9)).toEqual([]);
		expect(codes(cone, 20.1)).toEqual(['unlikely-size']);
		expect(codes(cone, 1000)).toEqual(['unlikely-size']);
	});

	it('leaves points without a triangle and without a place out of account, and says so', () => {
		const extra = Float32Array.from([...cone.positions, NaN, 0, Infinity]);
		expect(codes({ positions: extra, indices: cone.indices })).toEqual(['bad-points']);
		const { mesh } = finishMesh({ positions: extra, indices: cone.indices }, 1, false);
		expect(bounds(mesh)).toEqual(bounds(cone));
		const half = { positions: cone.positions, indices: cone.indices.slice(0, 900) };
		expect(codes(half)).toContain('unused-points');
	});

	it('keeps the fine digits of a surface far from the origin when it may be moved', () => {
		const far = Float64Array.from(cone.positions, (v, i) => v + [4e6, -2e6, 1e6][i % 3]);
		const moved = finishMesh({ positions: far, indices: cone.indices }, 1, true);
		expect(volume(moved.mesh) / volume(cone)).toBeCloseTo(1, 6);
		expect(moved.origin_mm.every(Number.isInteger)).toBe(true);
		for (let i = 0; i < far.length; i++) {
			expect(moved.mesh.positions[i] + moved.origin_mm[i % 3]).toBeCloseTo(far[i], 5);
		}
		expect(moved.warnings).toEqual([]);
		const kept = finishMesh({ positions: far, indices: cone.indices }, 1, false);
		expect(kept.origin_mm).toEqual([0, 0, 0]);
		expect(kept.warnings.map(({ code }) => code)).toContain('far-from-origin');
	});
});

describe('isLoose', () => {
	/** every triangle a little smaller about its own middle, so that no two touch */
	const apart = (mesh: TriMesh): TriMesh => {
		const { positions, indices } = soup(mesh, 1);
		const loose = positions.slice();
		for (let i = 0; i < loose.length; i++) {
			const start = i - (i % 9) + (i % 3);
			const middle = (positions[start] + positions[start + 3] + positions[start + 6]) / 3;
			loose[i] = middle + (positions[i] - middle) * 0.9;
		}
		return { positions: loose, indices };
	};

	it('tells separate triangles from a joined surface, welded or not', () => {
		for (const shape of [sphere(5, 80, 40), ellipticCone(4, 3, [1, 20, 0], 90, 60)]) {
			const size = bounds(shape).diagonal;
			expect(isLoose(shape, size)).toBe(false);
			expect(isLoose(soup(shape, 1), size)).toBe(false);
			expect(isLoose(apart(shape), size)).toBe(true);
			expect(() => finishMesh(apart(shape), 1, false)).toThrow(/not joined/);
		}
	});
});
