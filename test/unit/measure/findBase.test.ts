import { describe, expect, it } from 'vitest';
import { findBase } from '../../../src/lib/domain/measure/findBase';
import { topology } from '../../../src/lib/domain/mesh/topology';
import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { vec3, type Vec3 } from '../../../src/lib/domain/vec3';
import { ellipticCone, placed, rotation, sphere, stack } from '../mesh/shapes';

const turn = [0.6, -1.2, 2.5] as const;
const up = rotation(...turn).map((row) => row[1]) as unknown as Vec3;
const find = (mesh: TriMesh) => findBase(mesh, topology(mesh))!;

/** Crown with a pulp cavity: outer wall, flat rim of the given width, inner wall. */
const hollow = (opening: number): TriMesh =>
	stack(
		[
			...Array.from({ length: 40 }, (_, i) => ({ h: 30 - (28 * i) / 39, k: 1 })),
			...Array.from({ length: 30 }, (_, i) => ({ h: 0, k: i === 0 ? 1 : opening })).slice(0, 2),
			...Array.from({ length: 20 }, (_, i) => ({ h: i + 1, k: opening })),
		]
			.reverse()
			.map(({ h, k }) => ({
				centre: [0, h, 0] as const,
				a: 10 * (1 - h / 32) * k,
				b: 7 * (1 - h / 32) * k,
			})),
		96,
		null,
		[0, 31, 0],
	);

describe('findBase', () => {
	it.each([
		['of a slender cone', ellipticCone(8, 6, [6, 45, 2], 160, 60)],
		['of a low cone', ellipticCone(10, 9, [2, 6, 0], 160, 60)],
		['of a cone that leans beyond its base', ellipticCone(8, 6, [14, 30, 0], 160, 60)],
	])('finds the cut end %s', (_, mesh) => {
		const base = find(placed(mesh, turn, 1, [40, 50, 60]));
		expect(base.kind).toBe('cut');
		expect(vec3.dot(base.frame.normal, up)).toBeGreaterThan(0.99999);
		const height = vec3.dot(vec3.subtract(base.frame.origin, [40, 50, 60]), up);
		expect(Math.abs(height)).toBeLessThan(1e-3);
	});

	it.each([0.5, 0.9])('finds the rim round a pulp cavity %d as wide as the crown', (opening) => {
		const base = find(placed(hollow(opening), turn, 1, [0, 0, 0]));
		expect(vec3.dot(base.frame.normal, up)).toBeGreaterThan(0.9999);
		expect(Math.abs(vec3.dot(base.frame.origin, up))).toBeLessThan(0.02);
	});

	it('finds an open rim', () => {
		const cone = ellipticCone(8, 6, [6, 45, 2], 160, 60);
		const base = find(placed({ ...cone, indices: cone.indices.slice(0, 160 * 59 * 6) }, turn, 1, [0, 0, 0]));
		expect(base.kind).toBe('rim');
		expect(Math.abs(vec3.dot(base.frame.normal, up))).toBeGreaterThan(0.9999);
	});

	it('finds no flat end on a sphere or an egg, but the blunter end of the egg', () => {
		expect(find(sphere(5, 64, 32))).toMatchObject({ kind: 'end', outline: null });
		const rings = Array.from({ length: 60 }, (_, i) => {
			const t = (i + 0.5) / 60;
			const r = 10 * Math.sqrt(t * (1 - t)) * 2 * (1.3 - 0.8 * t);
			return { centre: [0, 40 * t, 0] as const, a: r, b: r };
		});
		const egg = find(placed(stack(rings, 64, [0, 0, 0], [0, 40, 0]), turn, 1, [0, 0, 0]));
		expect(egg.kind).toBe('end');
		expect(vec3.dot(egg.frame.normal, up)).toBeGreaterThan(0.999);
	});
});
