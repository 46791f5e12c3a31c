import { describe, expect, it } from 'vitest';
import { regionAreas } from '../../../src/lib/domain/compare/regionAreas';
import { regionIndex, type TriMesh } from '../../../src/lib/domain/mesh/triMesh';

/** Three right triangles side by side with legs 1 and 2, 1 and 4, 1 and 6. */
const MESH: TriMesh = {
	positions: Float32Array.from([0, 0, 0, 1, 0, 0, 0, 2, 0, 0, 4, 0, 0, 6, 0]),
	indices: Uint32Array.from([0, 1, 2, 0, 1, 3, 0, 1, 4]),
	regions: Uint8Array.from([regionIndex('enamel'), regionIndex('facet'), regionIndex('enamel')]),
};

describe('regionAreas', () => {
	it('adds up the triangles of each region', () => {
		expect(regionAreas(MESH)).toEqual({
			enamel: 4,
			carina: 0,
			ridge: 0,
			facet: 2,
			dentine: 0,
			root: 0,
			pit: 0,
			pulp: 0,
		});
	});

	it('knows nothing of a mesh without regions', () => {
		expect(regionAreas({ positions: MESH.positions, indices: MESH.indices })).toBeNull();
	});
});
