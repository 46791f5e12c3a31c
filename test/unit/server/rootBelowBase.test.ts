import { describe, expect, it } from 'vitest';
import { surfaceArea } from '../../../src/lib/domain/mesh/surfaceArea';
import { topology } from '../../../src/lib/domain/mesh/topology';
import { regionIndex } from '../../../src/lib/domain/mesh/triMesh';
import { weld } from '../../../src/lib/domain/mesh/weld';
import { rootBelowBase } from '../../../src/lib/server/prepare/rootBelowBase';
import type { ShapeLevel } from '../../../src/lib/server/prepare/shapeLevel';
import { ball } from './samples';

const ENAMEL = regionIndex('enamel');
const ROOT = regionIndex('root');

/** A ball whose base plane cuts through its triangles, 2.3 mm below its middle. */
function level(): ShapeLevel {
	const { positions, ...rest } = ball(20);
	return {
		...rest,
		positions: positions.map((value, i) => (i % 3 === 1 ? value + 2.3 : value)),
		regions: new Uint8Array(rest.regions.length).fill(ENAMEL),
		openness: Uint8Array.from(rest.openness, (_, i) => i % 256),
	};
}

describe('rootBelowBase', () => {
	it('cuts along the base plane: enamel above it, root below', () => {
		const cut = rootBelowBase(level());
		for (let k = 0; k < cut.indices.length; k += 3) {
			const corners = [...cut.indices.subarray(k, k + 3)];
			const heights = corners.map((vertex) => cut.positions[vertex * 3 + 1]);
			const regions = new Set(corners.map((vertex) => cut.regions[vertex]));
			expect(regions.size).toBe(1);
			if (regions.has(ROOT)) expect(Math.max(...heights)).toBeLessThan(1e-5);
			else expect(Math.min(...heights)).toBeGreaterThan(-1e-5);
		}
		expect(new Set(cut.regions)).toEqual(new Set([ENAMEL, ROOT]));
	});

	it('changes neither surface nor shading', () => {
		const before = level();
		const cut = rootBelowBase(before);
		expect(surfaceArea(cut)).toBeCloseTo(surfaceArea(before), 2);
		const { watertight, oriented } = topology(weld(cut));
		expect([watertight, oriented]).toEqual([true, true]);
		for (let i = 0; i < cut.normals.length; i += 3)
			expect(Math.hypot(cut.normals[i], cut.normals[i + 1], cut.normals[i + 2])).toBeCloseTo(1, 5);
	});

	it('leaves what lies wholly above the base as it is', () => {
		const { positions, ...rest } = level();
		const high = { ...rest, positions: positions.map((value, i) => (i % 3 === 1 ? value + 20 : value)) };
		const cut = rootBelowBase(high);
		expect(cut.indices.length).toBe(high.indices.length);
		expect(new Set(cut.regions)).toEqual(new Set([ENAMEL]));
	});
});
