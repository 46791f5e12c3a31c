import { describe, expect, it } from 'vitest';
import { foldLines } from '../../../src/lib/domain/mesh/foldLines';
import { regionIndex } from '../../../src/lib/domain/mesh/triMesh';
import { vertexNormals } from '../../../src/lib/domain/mesh/vertexNormals';
import { vec3 } from '../../../src/lib/domain/vec3';
import { sphere, torus } from './shapes';

describe('foldLines', () => {
	it('of a sphere is the great circle across the view', () => {
		const ball = sphere(5, 128, 64);
		const towards = vec3.normalise([1, 2, 3]);
		const [circle, ...more] = foldLines(ball, vertexNormals(ball), towards);
		expect(more).toEqual([]);
		expect(circle.closed).toBe(true);
		expect(circle.points.length / 3).toBeGreaterThan(100);
		for (let i = 0; i < circle.points.length; i += 3) {
			const p = [circle.points[i], circle.points[i + 1], circle.points[i + 2]] as const;
			expect(Math.abs(vec3.norm(p) / 5 - 1)).toBeLessThan(0.002);
			expect(Math.abs(vec3.dot(p, towards))).toBeLessThan(0.05);
		}
	});

	it('of a ring seen along its axis is its inner and its outer circle', () => {
		const ring = torus(9, 3, 128, 64);
		const lines = foldLines(ring, vertexNormals(ring), [0, 1, 0]);
		const radii = lines.map(({ points }) => Math.hypot(points[0], points[2])).sort((a, b) => a - b);
		expect(radii).toHaveLength(2);
		expect(radii[0]).toBeCloseTo(6, 1);
		expect(radii[1]).toBeCloseTo(12, 1);
	});

	it('leaves out what belongs to a cutting edge or ridge', () => {
		const ball = sphere(5, 64, 32);
		for (const region of ['carina', 'ridge'] as const) {
			const regions = new Uint8Array(ball.indices.length / 3).fill(regionIndex(region));
			expect(foldLines({ ...ball, regions }, vertexNormals(ball), [0, 0, 1])).toEqual([]);
		}
	});
});
