import { describe, expect, it } from 'vitest';
import { normals } from '../../../src/lib/domain/mesh/normals';
import { regionIndex } from '../../../src/lib/domain/mesh/triMesh';
import { box, sphere, stack } from './shapes';

describe('normals', () => {
	it('of a sphere point from its centre and split nothing', () => {
		const mesh = sphere(5, 48, 24);
		const shaded = normals(mesh);
		expect(shaded.source.length).toBe(mesh.positions.length / 3);
		for (let i = 0; i < shaded.positions.length; i += 3) {
			const along = [0, 1, 2].reduce(
				(sum, k) => sum + (shaded.normals[i + k] * shaded.positions[i + k]) / 5,
				0,
			);
			expect(along).toBeGreaterThan(0.999);
		}
	});

	it('of a box keep its edges: 24 vertices, each with the normal of its face', () => {
		const shaded = normals(box(1, 2, 3));
		expect(shaded.source.length).toBe(24);
		for (let i = 0; i < 72; i += 3) {
			const n = [...shaded.normals.slice(i, i + 3)].map(Math.abs).sort();
			expect(n).toEqual([0, 0, 1]);
		}
		expect(normals(box(1, 2, 3), { crease_deg: 100 }).source.length).toBe(8);
	});

	it('double vertices where regions meet, without a seam in the shading', () => {
		const rings = [0, 1, 2].map((y) => ({ centre: [0, y, 0] as const, a: 2, b: 2 }));
		const tube = stack(rings, 24, null, null);
		const half = tube.indices.length / 6;
		const root = regionIndex('root');
		const regions = Uint8Array.from({ length: half * 2 }, (_, t) => (t < half ? root : 0));
		const shaded = normals({ ...tube, regions });
		expect(shaded.source.length).toBe(24 * 4);
		// the two copies of a vertex of the middle ring
		for (let v = 24; v < 48; v++) {
			const copies = [...shaded.source.keys()].filter((i) => shaded.source[i] === v);
			expect(copies).toHaveLength(2);
			expect(new Set(copies.map((i) => shaded.regions[i]))).toEqual(new Set([0, root]));
			const [a, b] = copies.map((i) => [...shaded.normals.slice(i * 3, i * 3 + 3)]);
			expect(a).toEqual(b);
		}
	});

	it('keep the border of a facet crisp however low its edge', () => {
		// a roof of two faces that meet at 20 degrees, below the crease angle
		const rise = Math.tan((10 * Math.PI) / 180);
		const roof = {
			positions: Float32Array.of(-1, 0, 0, 0, rise, 0, 0, rise, 1, 1, 0, 0),
			indices: Uint32Array.of(0, 2, 1, 1, 2, 3),
		};
		expect(normals(roof).source.length).toBe(4);
		const facet = normals({ ...roof, regions: Uint8Array.of(0, regionIndex('facet')) });
		expect(facet.source.length).toBe(6);
		const onFacet = [...facet.source.keys()].filter((i) => facet.regions[i] !== 0);
		for (const i of onFacet) expect(facet.normals[i * 3]).toBeCloseTo(Math.sin((10 * Math.PI) / 180), 5);
	});

	it('keep the order of triangles and corners', () => {
		const mesh = box(1, 2, 3);
		const shaded = normals(mesh);
		expect([...shaded.indices].map((i) => shaded.source[i])).toEqual([...mesh.indices]);
	});
});
