import { describe, expect, it } from 'vitest';
import { topology } from '../../../src/lib/domain/mesh/topology';
import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { volume } from '../../../src/lib/domain/mesh/volume';
import { weld } from '../../../src/lib/domain/mesh/weld';
import { closeSmallHoles } from '../../../src/lib/server/prepare/closeSmallHoles';
import { ball } from './samples';

const whole = weld(ball(40));

/** The ball without the triangles whose middle lies in any of some other balls. */
function without(holes: { at: [number, number, number]; radius: number }[]): TriMesh {
	const p = whole.positions;
	const left: number[] = [];
	for (let k = 0; k < whole.indices.length; k += 3) {
		const corners = whole.indices.subarray(k, k + 3);
		const middle = [0, 1, 2].map((axis) => corners.reduce((sum, v) => sum + p[v * 3 + axis] / 3, 0));
		const inside = holes.some(
			({ at, radius }) => Math.hypot(...middle.map((value, axis) => value - at[axis])) < radius,
		);
		if (!inside) left.push(...corners);
	}
	return { positions: p, indices: Uint32Array.from(left) };
}

describe('closeSmallHoles', () => {
	it('gives a whole mesh back as it is', () => {
		expect(closeSmallHoles({ ...whole })).toEqual(whole);
	});

	it('closes holes of any outline with lids that face outwards', () => {
		const holed = without([
			{ at: [10, 0, 0], radius: 1.2 },
			{ at: [0, 7.07, 7.07], radius: 1.5 },
			{ at: [0, 7.07, -7.07], radius: 0.6 },
		]);
		expect(topology(holed).boundaryLoops.length).toBe(3);
		const closed = closeSmallHoles(holed);
		const { watertight, oriented } = topology(closed);
		expect([watertight, oriented]).toEqual([true, true]);
		// lids are flat, so a little is missing; a lid turned inwards would take far more
		expect(volume(closed) / volume(whole)).toBeGreaterThan(0.998);
		expect(volume(closed) / volume(whole)).toBeLessThan(1);
	});

	it('leaves a wide opening open, and closes the small hole beside it', () => {
		const holed = without([
			{ at: [0, -10, 0], radius: 6 },
			{ at: [10, 0, 0], radius: 1 },
		]);
		const { boundaryLoops } = topology(closeSmallHoles(holed));
		expect(boundaryLoops.length).toBe(1);
		expect(boundaryLoops[0].length).toBeGreaterThan(20);
	});
});
