import type { BufferAttribute } from 'three';
import { describe, expect, it } from 'vitest';
import { regionIndex, type TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { bendGeometry, meshGeometry, sameTopology } from '../../../src/lib/stage/meshGeometry';
import { plainForm, sculpted } from '../tooth/helpers';

const made = (crownHeight_mm: number): TriMesh =>
	sculpted(plainForm({ crownHeight_mm, wear: { tipWornTo_mm: crownHeight_mm * 0.9 } }), { detail: 'draft' })
		.mesh;
const stretched = ({ positions, ...rest }: TriMesh, by: number): TriMesh => ({
	...rest,
	positions: positions.map((value, i) => (i % 3 === 1 ? value * by : value)),
});

describe('meshGeometry', () => {
	const mesh = made(20);
	const shape = meshGeometry(mesh);

	it('draws every triangle, and all its corners carry its region', () => {
		expect(shape.full.index!.count).toBe(mesh.indices.length);
		const surface = shape.full.getAttribute('surface').array;
		const index = shape.full.index!.array;
		for (let t = 0; t < mesh.indices.length / 3; t++)
			for (let k = 0; k < 3; k++) expect(surface[index[t * 3 + k] * 4 + 2]).toBe(mesh.regions![t]);
	});

	it('makes a crease where the worn tip meets the enamel', () => {
		const facet = regionIndex('facet');
		const surface = shape.full.getAttribute('surface').array;
		const normal = shape.full.getAttribute('normal').array;
		let facets = 0;
		for (let i = 0; i < shape.source.length; i++) {
			if (surface[i * 4 + 2] !== facet) continue;
			facets++;
			expect(normal[i * 3 + 1]).toBeCloseTo(1, 5);
		}
		expect(facets).toBeGreaterThan(3);
	});

	it('has unit normals that look outward', () => {
		const normal = shape.full.getAttribute('normal').array;
		for (let i = 0; i < normal.length; i += 3)
			expect(Math.hypot(normal[i], normal[i + 1], normal[i + 2])).toBeCloseTo(1, 5);
		// the most labial vertex looks towards the lip
		const position = shape.full.getAttribute('position').array;
		let most = 0;
		for (let i = 0; i < position.length; i += 3) if (position[i + 2] > position[most + 2]) most = i;
		expect(normal[most + 2]).toBeGreaterThan(0.7);
	});

	it('bends into exactly what would be made anew, and keeps its buffers', () => {
		const bent = meshGeometry(mesh);
		const buffer = bent.full.getAttribute('position').array;
		const longer = stretched(mesh, 1.7);
		const version = (bent.full.getAttribute('position') as BufferAttribute).version;
		bendGeometry(bent, longer);
		const fresh = meshGeometry(longer);
		expect(bent.full.getAttribute('position').array).toBe(buffer);
		expect((bent.full.getAttribute('position') as BufferAttribute).version).toBeGreaterThan(version);
		for (const name of ['position', 'normal'])
			expect(bent.full.getAttribute(name).array).toEqual(fresh.full.getAttribute(name).array);
		expect(bent.centreLine).toEqual(fresh.centreLine);
	});

	it('takes the light it is given, per vertex of the mesh', () => {
		const light = Float32Array.from({ length: mesh.positions.length / 3 }, (_, i) => (i % 5) / 4);
		const lit = meshGeometry(mesh, light);
		const surface = lit.full.getAttribute('surface').array;
		lit.source.forEach((vertex, i) => expect(surface[i * 4]).toBe(Math.round(255 * light[vertex])));
	});

	it('knows what is the same mesh bent', () => {
		expect(sameTopology(mesh, stretched(mesh, 2))).toBe(true);
		expect(sameTopology(mesh, { ...mesh, indices: mesh.indices.slice().reverse() })).toBe(false);
		expect(sameTopology(mesh, { positions: mesh.positions, indices: mesh.indices })).toBe(false);
	});
});
