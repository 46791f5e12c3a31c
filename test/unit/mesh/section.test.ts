import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { orient } from '../../../src/lib/domain/mesh/orient';
import { planeFrame } from '../../../src/lib/domain/mesh/planeFrame';
import { section } from '../../../src/lib/domain/mesh/section';
import { sectionMeasure } from '../../../src/lib/domain/mesh/sectionMeasure';
import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { weld } from '../../../src/lib/domain/mesh/weld';
import { box, ellipticCone, rotation, soup, sphere, stack, torus } from './shapes';

const up = planeFrame([0, 0, 0], [0, 1, 0], [1, 0, 0]);
const cut = (mesh: TriMesh, height: number) => sectionMeasure(section(mesh, up, height))!;

describe('section', () => {
	it('of an elliptic cone is the base ellipse, smaller in proportion, over the leaning centreline', () => {
		const mesh = ellipticCone(10, 6, [8, 40, 4], 360, 60);
		for (const at of [0.1, 0.25, 0.5, 0.9]) {
			const s = cut(mesh, 40 * at);
			expect(s.area / (Math.PI * 60 * (1 - at) ** 2)).toBeCloseTo(1, 3);
			expect(s.length / (20 * (1 - at))).toBeCloseTo(1, 4);
			expect(s.width / (12 * (1 - at))).toBeCloseTo(1, 4);
			expect(s.centroid[0]).toBeCloseTo(8 * at, 3);
			expect(s.centroid[1]).toBeCloseTo(-4 * at, 3); // v = normal x u = -z
			expect(s.closed).toBe(true);
		}
	});

	it('has the perimeter of an ellipse after Ramanujan', () => {
		// second approximation of 1914, error below 1e-9 at this ratio: pi (a+b)(1 + 3h/(10 + sqrt(4 - 3h)))
		const h = ((10 - 6) / (10 + 6)) ** 2;
		const exact = Math.PI * 16 * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
		expect(cut(ellipticCone(20, 12, [0, 40, 0], 720), 20).perimeter / exact).toBeCloseTo(1, 4);
	});

	it('passes through vertices on the plane without a gap', () => {
		const mesh = sphere(5, 32, 16); // has a ring of vertices at height 0
		const s = section(mesh, up, 0);
		expect(s).toHaveLength(1);
		expect(s[0].closed).toBe(true);
		// a 32-gon, less the corners that single precision moves
		expect(s[0].area).toBeCloseTo(16 * 25 * Math.sin((2 * Math.PI) / 32), 4);
	});

	it('closes at every height, vertices on the plane or not (seed 21)', () => {
		const mesh = sphere(5, 20, 10);
		fc.assert(
			fc.property(
				fc.oneof(fc.double({ min: -4.9, max: 4.9, noNaN: true }), fc.constantFrom(...ringHeights(mesh))),
				(height) => {
					const s = section(mesh, up, height);
					expect(s.length).toBe(1);
					expect(s[0].closed).toBe(true);
				},
			),
			{ seed: 21, numRuns: 200 },
		);
	});

	it('takes the hole out of a ring', () => {
		const s = section(torus(9, 2, 256, 128), up, 0);
		expect(s.map((loop) => loop.hole)).toEqual([false, true]);
		const values = sectionMeasure(s)!;
		expect(values.area / (Math.PI * (11 ** 2 - 7 ** 2))).toBeCloseTo(1, 2);
		expect(values.length).toBeCloseTo(22, 4);
		expect(values.perimeter / (2 * Math.PI * 11)).toBeCloseTo(1, 3); // of the outer loop alone
	});

	it('does not depend on order and winding of the triangles, nor on place (seed 22)', () => {
		const mesh = ellipticCone(10, 6, [8, 40, 4], 48, 20);
		const plain = cut(mesh, 11);
		const angle = fc.double({ min: -3, max: 3, noNaN: true });
		fc.assert(
			fc.property(fc.nat(), fc.tuple(angle, angle, angle), (seed, angles) => {
				const rows = rotation(...angles);
				const moved = weld(soup(orient(mesh, rows, [5, -6, 7]), seed));
				for (let k = 0; k < moved.indices.length; k += 9) {
					[moved.indices[k], moved.indices[k + 1]] = [moved.indices[k + 1], moved.indices[k]];
				}
				const turn = (x: number, y: number, z: number) =>
					rows.map((r) => r[0] * x + r[1] * y + r[2] * z) as [number, number, number];
				const frame = planeFrame([5, -6, 7], turn(0, 1, 0), turn(1, 0, 0));
				const s = sectionMeasure(section(moved, frame, 11))!;
				expect(s.area).toBeCloseTo(plain.area, 2);
				expect(s.length).toBeCloseTo(plain.length, 3);
				expect(s.width).toBeCloseTo(plain.width, 3);
				expect(s.perimeter).toBeCloseTo(plain.perimeter, 3);
			}),
			{ seed: 22, numRuns: 30 },
		);
	});

	it('says when an opening was bridged', () => {
		const ring = { a: 2, b: 2 };
		const tube = stack(
			[
				{ ...ring, centre: [0, 0, 0] },
				{ ...ring, centre: [0, 3, 0] },
			],
			16,
			null,
			null,
		);
		const slit = { ...tube, indices: tube.indices.slice(6) }; // one panel is gone
		const s = section(slit, up, 1.5);
		expect(s).toHaveLength(1);
		expect(s[0].closed).toBe(false);
		expect(s[0].area).toBeCloseTo(section(tube, up, 1.5)[0].area, 6);
	});

	it('is empty above and below the mesh', () => {
		expect(section(box(1, 1, 1), up, 1.5)).toEqual([]);
		expect(sectionMeasure(section(box(1, 1, 1), up, -0.5))).toBeNull();
	});
});

function ringHeights(mesh: TriMesh): number[] {
	const heights = new Set(mesh.positions.filter((_, i) => i % 3 === 1));
	return [...heights].filter((h) => Math.abs(h) < 4.9);
}
