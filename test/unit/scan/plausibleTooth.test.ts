import { describe, expect, it } from 'vitest';
import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { weld } from '../../../src/lib/domain/mesh/weld';
import type { Vec3 } from '../../../src/lib/domain/vec3';
import { plausibleTooth } from '../../../src/lib/server/scan/plausibleTooth';
import { plainForm, sculpted } from '../tooth/helpers';
import { box, ellipticCone, placed, sphere, stack, torus } from '../mesh/shapes';

function together(...meshes: TriMesh[]): TriMesh {
	const positions: number[] = [];
	const indices: number[] = [];
	for (const mesh of meshes) {
		const before = positions.length / 3;
		positions.push(...mesh.positions);
		for (const i of mesh.indices) indices.push(i + before);
	}
	return { positions: Float32Array.from(positions), indices: Uint32Array.from(indices) };
}

const at = (mesh: TriMesh, move: Vec3): TriMesh => placed(mesh, [0, 0, 0], 1, move);
const cone = ellipticCone(4, 3, [2, 15, 0], 48, 24);

/** Round cone whose middle line is an arc that turns by an angle. */
function fang(turn_deg: number): TriMesh {
	const turn = (turn_deg * Math.PI) / 180;
	const radius = 20 / turn;
	const [up, around] = [60, 48];
	const straight = stack(
		Array.from({ length: up }, (_, i) => ({
			centre: [0, i / up, 0] as Vec3,
			a: 3 * (1 - i / up),
			b: 3 * (1 - i / up),
		})),
		around,
		[0, 0, 0],
		[0, 1, 0],
	);
	const positions = straight.positions.slice();
	for (let i = 0; i < positions.length; i += 3) {
		const [x, s] = [positions[i], positions[i + 1]];
		positions[i] = radius - (radius - x) * Math.cos(turn * s);
		positions[i + 1] = (radius - x) * Math.sin(turn * s);
	}
	return { ...straight, positions };
}

describe('plausibleTooth', () => {
	it('has no doubt about single pieces of a tooth’s kind, in any position', () => {
		const crowns: TriMesh[] = [cone, sphere(5), box(3, 9, 4), ...[20, 60, 90, 120].map(fang)];
		for (const shape of crowns) {
			for (const angles of [
				[0, 0, 0],
				[0.5, 1, 2],
			] as Vec3[]) {
				expect(plausibleTooth(placed(shape, angles, 1, [5, -9, 30]))).toBeNull();
			}
		}
	});

	it('has no doubt about sculpted teeth, hollow and rooted ones too', () => {
		const curve = { distal_deg: 45, lingual_deg: 20, startsAt: 0.2 };
		for (const change of [
			{},
			{ curve, pulp: { height_mm: 10, opening: 0.6 } },
			{ curve, root: { state: 'open' as const, length_mm: 15 } },
			{ root: { state: 'full' as const, length_mm: 50, swelling: 1.2, folded: true } },
		]) {
			const { mesh } = sculpted(plainForm(change), { detail: 'draft' });
			expect(plausibleTooth(weld(mesh))).toBeNull();
		}
	});

	it('does not count the wall of a hollow, or a chip, as a second tooth', () => {
		const cavity = placed(cone, [0, 0, 0], 0.6, [0.3, 1, 0]);
		expect(
			plausibleTooth(together(cone, { ...cavity, indices: cavity.indices.slice().reverse() })),
		).toBeNull();
		expect(plausibleTooth(together(cone, placed(cone, [0, 0, 0], 0.2, [9, 0, 0])))).toBeNull();
	});

	it('doubts separate teeth, a row of teeth, and pieces full of holes', () => {
		expect(plausibleTooth(together(cone, at(cone, [12, 0, 0])))?.message).toMatch(/2 separate pieces/);
		expect(
			plausibleTooth(together(...[0, 1, 2, 3, 4].map((i) => at(cone, [12 * i, 0, 0]))))?.message,
		).toMatch(/5 separate/);
		// three rings that stand across one another, as the arches of a skull do
		const rings = together(
			torus(10, 1.5, 64, 16),
			placed(torus(10, 1.5, 64, 16), [0, Math.PI / 2, 0], 1, [0, 0, 0]),
			placed(torus(10, 1.5, 64, 16), [0, 0, Math.PI / 2], 1, [0, 0, 0]),
		);
		expect(plausibleTooth(rings)).not.toBeNull();
	});

	it('doubts a jaw: one bone with teeth in a row on it', () => {
		expect(plausibleTooth(comb(6))?.message).toMatch(/five or more parts|most of the space/);
		expect(plausibleTooth(comb(3))).toBeNull();
	});
});

/** One closed wall: a bar with square pegs on top, of one piece. */
function comb(pegs: number): TriMesh {
	// heights of the top over a grid of cells along x, one cell deep: pegs and gaps by turns
	const positions: number[] = [];
	const indices: number[] = [];
	const quad = (a: Vec3, b: Vec3, c: Vec3, d: Vec3): void => {
		const k = positions.length / 3;
		positions.push(...a, ...b, ...c, ...d);
		indices.push(k, k + 1, k + 2, k, k + 2, k + 3);
	};
	const cells = pegs * 2 - 1;
	const height = (cell: number): number => (cell < 0 || cell >= cells ? 0 : cell % 2 === 0 ? 16 : 4);
	for (let cell = 0; cell < cells; cell++) {
		const [x, next, top] = [cell * 4, cell * 4 + 4, height(cell)];
		quad([x, top, 0], [x, top, 4], [next, top, 4], [next, top, 0]);
		quad([x, 0, 0], [next, 0, 0], [next, 0, 4], [x, 0, 4]);
		// front and back: split at the height of the bar, so that neighbours share whole edges
		for (const [low, high] of top > 4
			? [
					[0, 4],
					[4, top],
				]
			: [[0, top]]) {
			quad([x, low, 4], [next, low, 4], [next, high, 4], [x, high, 4]);
			quad([x, low, 0], [x, high, 0], [next, high, 0], [next, low, 0]);
		}
	}
	for (let cell = 0; cell <= cells; cell++) {
		const [before, after, x] = [height(cell - 1), height(cell), cell * 4];
		const steps: [number, number][] =
			before === after
				? []
				: Math.min(before, after) === 0
					? [
							[0, 4],
							[4, 16],
						]
					: [[4, 16]];
		for (const [low, high] of steps) {
			if (before > after) quad([x, low, 0], [x, high, 0], [x, high, 4], [x, low, 4]);
			else quad([x, low, 0], [x, low, 4], [x, high, 4], [x, high, 0]);
		}
	}
	return weld({ positions: Float32Array.from(positions), indices: Uint32Array.from(indices) });
}
