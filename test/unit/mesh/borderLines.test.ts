import { describe, expect, it } from 'vitest';
import { borderLines } from '../../../src/lib/domain/mesh/borderLines';
import { regionIndex, type Region, type TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { vertexNormals } from '../../../src/lib/domain/mesh/vertexNormals';
import { box, sphere } from './shapes';

/** A ball whose upper part is of one region and its lower part of another. */
function capped(upper: Region, lower: Region): TriMesh {
	const ball = sphere(5, 96, 48);
	const regions = new Uint8Array(ball.indices.length / 3);
	for (let t = 0; t < regions.length; t++) {
		const y = [0, 1, 2].reduce((sum, k) => sum + ball.positions[ball.indices[t * 3 + k] * 3 + 1], 0);
		regions[t] = regionIndex(y > 0 ? upper : lower);
	}
	return { ...ball, regions };
}
const kinds = (mesh: TriMesh): string[] => borderLines(mesh, vertexNormals(mesh)).map(({ kind }) => kind);

describe('borderLines', () => {
	it('run round where two regions meet, named by what ends there', () => {
		expect(kinds(capped('enamel', 'root'))).toEqual(['base']);
		expect(kinds(capped('enamel', 'facet'))).toEqual(['facet']);
		expect(kinds(capped('root', 'pit'))).toEqual(['rim']);
		expect(kinds(capped('root', 'pulp'))).toEqual(['rim']);
		expect(kinds(capped('enamel', 'dentine'))).toEqual(['break']);
		const [{ closed, points }] = borderLines(capped('enamel', 'root'), vertexNormals(sphere(5, 96, 48)));
		expect(closed).toBe(true);
		expect(points.length / 3).toBe(96);
		for (let i = 1; i < points.length; i += 3) expect(Math.abs(points[i])).toBeLessThan(1e-6);
	});

	it('take a cutting edge and a ridge for enamel', () => {
		expect(kinds(capped('enamel', 'carina'))).toEqual([]);
		expect(kinds(capped('ridge', 'enamel'))).toEqual([]);
	});

	it('follow the sharp corners of a raw scan', () => {
		const cube = box(2, 3, 4);
		const lines = borderLines(cube, vertexNormals(cube));
		// its twelve edges, each once
		const total = lines.reduce((sum, { points }) => {
			let length = 0;
			for (let i = 3; i < points.length; i += 3)
				length += Math.hypot(
					points[i] - points[i - 3],
					points[i + 1] - points[i - 2],
					points[i + 2] - points[i - 1],
				);
			return sum + length;
		}, 0);
		expect(total).toBeCloseTo(4 * (2 + 3 + 4), 5);
		expect(kinds(sphere(5, 96, 48))).toEqual([]);
	});
});
