import { describe, expect, it } from 'vitest';
import { topology } from '../../../src/lib/domain/mesh/topology';
import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { box, sphere, stack, torus } from './shapes';

const both = (a: TriMesh, b: TriMesh): TriMesh => ({
	positions: Float32Array.of(...a.positions, ...b.positions),
	indices: Uint32Array.of(...a.indices, ...b.indices.map((i) => i + a.positions.length / 3)),
});

describe('topology', () => {
	it.each([
		['box', box(1, 1, 1), 2],
		['sphere', sphere(1, 20, 10), 2],
		['torus', torus(3, 1, 20, 10), 0],
	])('counts edges of a closed %s so that vertices - edges + triangles = %3$d (Euler)', (_, mesh, euler) => {
		const t = topology(mesh);
		expect(mesh.positions.length / 3 - t.edges + mesh.indices.length / 3).toBe(euler);
		expect(t).toMatchObject({ watertight: true, oriented: true, components: 1, boundaryLoops: [] });
		expect(t).toMatchObject({ boundaryEdges: 0, nonManifoldEdges: 0, flippedEdges: 0 });
	});

	it('tells pieces apart', () => {
		const t = topology(both(box(1, 1, 1), sphere(1, 8, 4)));
		expect(t.components).toBe(2);
		expect([...new Set(t.componentOf.slice(0, 12))]).toEqual([0]);
		expect([...new Set(t.componentOf.slice(12))]).toEqual([1]);
	});

	it('walks the two rims of an open tube', () => {
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
		const t = topology(tube);
		expect(t.watertight).toBe(false);
		expect(t.boundaryEdges).toBe(32);
		expect(t.boundaryLoops.map((loop) => loop.length)).toEqual([16, 16]);
		expect(new Set(t.boundaryLoops.flatMap((loop) => [...loop])).size).toBe(32);
	});

	it('notices a triangle that is turned over', () => {
		const mesh = box(1, 1, 1);
		const indices = mesh.indices.slice();
		[indices[0], indices[1]] = [indices[1], indices[0]];
		expect(topology({ ...mesh, indices })).toMatchObject({
			watertight: true,
			oriented: false,
			flippedEdges: 3,
		});
	});

	it('notices three triangles on one edge', () => {
		const fin = {
			positions: Float32Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1, 0, -1, 0),
			indices: Uint32Array.of(0, 1, 2, 1, 0, 3, 0, 1, 4),
		};
		expect(topology(fin)).toMatchObject({ nonManifoldEdges: 1, watertight: false });
	});

	it('has nothing to say about no triangles', () => {
		const nothing = { positions: new Float32Array(0), indices: new Uint32Array(0) };
		expect(topology(nothing)).toMatchObject({ watertight: false, components: 0, edges: 0 });
	});
});
