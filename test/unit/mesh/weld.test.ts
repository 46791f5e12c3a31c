import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { surfaceArea } from '../../../src/lib/domain/mesh/surfaceArea';
import { topology } from '../../../src/lib/domain/mesh/topology';
import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { weld } from '../../../src/lib/domain/mesh/weld';
import { box, placed, soup, sphere } from './shapes';

describe('weld', () => {
	it('makes eight corners of a box out of a soup of 36', () => {
		const mesh = weld(soup(box(1, 2, 3), 4));
		expect(mesh.positions.length / 3).toBe(8);
		expect(topology(mesh).watertight).toBe(true);
	});

	it('keeps a quad cut from two triangles of which one has fallen together, and its region', () => {
		// prettier-ignore
		const mesh: TriMesh = {
			positions: Float32Array.of(
				0, 0, 0,
				1, 0, 0,
				1, 1, 0,
				1, 1, 0, // the same as 2
				9, 9, 9, // used by nobody
			),
			indices: Uint32Array.of(
				2, 3, 1, // no area
				0, 1, 3,
			),
			regions: Uint8Array.of(5, 3),
		};
		const welded = weld(mesh);
		expect([...welded.indices]).toEqual([0, 1, 2]);
		expect([...welded.positions]).toEqual([0, 0, 0, 1, 0, 0, 1, 1, 0]);
		expect([...welded.regions!]).toEqual([3]);
	});

	it('joins what is within the tolerance and no more, across the borders of its grid (seed 11)', () => {
		fc.assert(
			fc.property(fc.double({ min: -5, max: 5, noNaN: true }), fc.constantFrom(0, 1, 2), (start, axis) => {
				const gap = 0.01; // of a diagonal of about 100
				const at = (shift: number): number[] => [0, 1, 2].map((k) => start + (k === axis ? shift : 0));
				const far = [60, 60, 60];
				const positions = Float32Array.of(...at(0), ...far, ...at(gap), ...[60, -40, 0], ...[0, 0, 0]);
				const indices = Uint32Array.of(0, 1, 3, 2, 3, 1);
				const mesh = { positions, indices };
				expect(weld(mesh, { tolerance: 3e-4 }).positions.length / 3).toBe(3);
				expect(weld(mesh, { tolerance: 3e-5 }).positions.length / 3).toBe(4);
			}),
			{ seed: 11, numRuns: 200 },
		);
	});

	it('closes a soup in any order and place, and keeps its area (seed 12)', () => {
		const mesh = sphere(5, 24, 12);
		fc.assert(
			fc.property(fc.nat(), fc.double({ min: -3, max: 3, noNaN: true }), (seed, angle) => {
				const moved = placed(mesh, [angle, 1, 2], 1, [angle * 30, 5, -80]);
				const welded = weld(soup(moved, seed));
				expect(welded.positions.length).toBe(mesh.positions.length);
				expect(topology(welded)).toMatchObject({ watertight: true, oriented: true, components: 1 });
				expect(surfaceArea(welded)).toBeCloseTo(surfaceArea(moved), 4);
			}),
			{ seed: 12, numRuns: 20 },
		);
	});
});
