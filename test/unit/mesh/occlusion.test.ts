import { describe, expect, it } from 'vitest';
import { occlusion } from '../../../src/lib/domain/mesh/occlusion';
import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { ellipticCone, sphere, stack } from './shapes';

describe('occlusion', () => {
	it('leaves a convex body fully open', () => {
		for (const mesh of [sphere(5, 96, 48), ellipticCone(10, 6, [4, 40, 0], 120, 40)]) {
			for (const open of occlusion(mesh)) expect(open).toBeGreaterThan(0.97);
		}
	});

	it('darkens a deep well: the middle of its floor sees the sky through the mouth alone', () => {
		// a cup: outer wall, rim, inner wall, floor. From the floor's middle the mouth fills a cone of half angle
		// atan(r/depth); cosine-weighted that is sin^2 of it
		const [r, depth] = [3, 6];
		const rings = [
			...[0, 2, 4, 6, 7].map((y) => ({ centre: [0, y, 0] as const, a: 4, b: 4 })),
			...[7, 6, 4.5, 3, 2, 1].map((y) => ({ centre: [0, y, 0] as const, a: r, b: r })),
			...[2, 1].map((a) => ({ centre: [0, 1, 0] as const, a, b: a })),
		];
		const cup = stack(rings, 64, [0, 0, 0], [0, 1, 0]);
		const open = occlusion(cup, { directions: 512 });
		const expected = Math.sin(Math.atan(r / depth)) ** 2;
		expect(open[cup.positions.length / 3 - 1]).toBeGreaterThan(expected - 0.08);
		expect(open[cup.positions.length / 3 - 1]).toBeLessThan(expected + 0.08);
		for (let v = 64; v < 128; v++) expect(open[v]).toBeGreaterThan(0.95); // outer wall
	});

	it('gives the same numbers each time', () => {
		const mesh: TriMesh = sphere(5, 32, 16);
		expect(occlusion(mesh)).toEqual(occlusion(mesh));
	});
});
