import { describe, expect, it } from 'vitest';
import { centrelineTurning, type NoCentreline } from '../../../src/lib/domain/measure/centrelineTurning';
import { planeFrame } from '../../../src/lib/domain/mesh/planeFrame';
import { heightsAlong } from '../../../src/lib/domain/mesh/section';
import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import type { Vec3 } from '../../../src/lib/domain/vec3';
import { ellipticCone } from '../mesh/shapes';

const base = planeFrame([0, 0, 0], [0, 1, 0], [1, 0, 0]);
const found = (mesh: TriMesh, apex: Vec3): number | NoCentreline =>
	centrelineTurning(mesh, base, apex, heightsAlong(mesh, base));
const turning = (mesh: TriMesh, apex: Vec3): number => {
	const degrees = found(mesh, apex);
	if (typeof degrees !== 'number') throw new Error(degrees);
	return degrees;
};

/** Tapering horn whose axis is an arc of a circle that begins upright. */
function horn(total_deg: number, length: number, radius: number): { mesh: TriMesh; apex: Vec3 } {
	const total = (total_deg * Math.PI) / 180;
	const bend = length / total;
	const [along, around] = [120, 96];
	const positions: number[] = [];
	const indices: number[] = [];
	const axis = (t: number): Vec3 => [bend * (1 - Math.cos(total * t)), bend * Math.sin(total * t), 0];
	for (let i = 0; i < along; i++) {
		const t = i / along;
		const c = axis(t);
		const r = radius * (1 - t);
		for (let j = 0; j < around; j++) {
			const q = (2 * Math.PI * j) / around;
			const out = r * Math.cos(q);
			positions.push(c[0] + out * Math.cos(total * t), c[1] - out * Math.sin(total * t), r * Math.sin(q));
			const at = (k: number, l: number): number => k * around + (l % around);
			if (i + 1 < along) {
				indices.push(at(i, j), at(i + 1, j), at(i, j + 1), at(i, j + 1), at(i + 1, j), at(i + 1, j + 1));
			} else {
				indices.push(at(i, j), along * around, at(i, j + 1));
			}
			if (i === 0) indices.push(along * around + 1, at(0, j), at(0, j + 1));
		}
	}
	positions.push(...axis(1), 0, 0, 0);
	return {
		mesh: { positions: Float32Array.from(positions), indices: Uint32Array.from(indices) },
		apex: axis(1),
	};
}

describe('centrelineTurning', () => {
	it.each([10, 30, 60, 75])('of a horn along an arc of %d degrees, within 4 %%', (degrees) => {
		const { mesh, apex } = horn(degrees, 50, 8);
		expect(Math.abs(turning(mesh, apex) / degrees - 1)).toBeLessThan(0.04);
	});

	it('of a straight cone is nothing, however it leans', () => {
		expect(turning(ellipticCone(8, 5, [0, 40, 0]), [0, 40, 0])).toBeLessThan(0.01);
		expect(turning(ellipticCone(8, 5, [20, 40, -6]), [20, 40, -6])).toBeLessThan(0.5);
	});

	it('is not told where the middles of the sections jump: two cones side by side, the taller first', () => {
		const pair = (shift: number, tall: number, rest: number): TriMesh => {
			const [one, two] = [ellipticCone(6, 6, [0, tall, 0]), ellipticCone(6, 6, [0, rest, 0])];
			const moved = two.positions.map((value, i) => (i % 3 === 0 ? value + shift : value));
			const after = one.positions.length / 3;
			return {
				positions: Float32Array.from([...one.positions, ...moved]),
				indices: Uint32Array.from([...one.indices, ...two.indices.map((vertex) => vertex + after)]),
			};
		};
		expect(typeof found(pair(0, 40, 40), [0, 40, 0])).toBe('number');
		// a ladder of pieces, each beside the one below it
		const steps = [0, 1, 2, 3].map((k) => {
			const piece = ellipticCone(6 - k, 6 - k, [0, 60, 0]);
			const moved = piece.positions.map((value, i) =>
				i % 3 === 0 ? value + (k % 2) * 14 : i % 3 === 1 ? Math.min(10, value / 4) + k * 10 : value,
			);
			return { positions: moved, indices: piece.indices };
		});
		const ladder: TriMesh = {
			positions: Float32Array.from(steps.flatMap(({ positions }) => [...positions])),
			indices: Uint32Array.from(
				steps.flatMap(({ indices }, k) => {
					const after = steps.slice(0, k).reduce((sum, { positions }) => sum + positions.length / 3, 0);
					return [...indices].map((vertex) => vertex + after);
				}),
			),
		};
		expect(found(ladder, [0, 40, 0])).toBe('no-line');
	});

	it('is not told where the sections have no outline', () => {
		const scrap = { positions: Float32Array.of(0, 0, 0, 1, 0, 0, 0, 9, 0), indices: Uint32Array.of(0, 1, 2) };
		expect(found(scrap, [0, 9, 0])).toBe('few-sections');
	});
});
