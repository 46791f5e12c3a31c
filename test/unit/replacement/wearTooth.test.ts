import { describe, expect, it } from 'vitest';
import { volume } from '../../../src/lib/domain/mesh/volume';
import { bitePlane, touchingSpacing, wearTooth } from '../../../src/lib/domain/replacement/wearTooth';
import { opposingMove, opposingPoints, SHUT_TIP } from '../../../src/lib/domain/replacement/bite';
import { isClosed } from '../../../src/lib/domain/tooth/isClosed';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import { plainForm } from '../tooth/helpers';

const tooth = (() => {
	const result = sculpt(plainForm(), { detail: 'draft' });
	if (!result.ok) throw new Error(result.problem.code);
	return result.value.mesh;
})();
const high = Math.max(...tooth.positions.filter((_, i) => i % 3 === 1));
const setup = { closing_deg: 25, spacing_mm: 0.36 * high };

describe('wearTooth', () => {
	it('takes more and more, down to the stump, and stays closed', () => {
		let last = Infinity;
		for (const progress of [0, 0.1, 0.3, 0.5, 0.8, 1]) {
			const worn = wearTooth(tooth, tooth, setup, progress, { stumpShare: 0.45 });
			expect(isClosed(worn.mesh)).toBe(true);
			expect(volume(worn.mesh)).toBeLessThan(last);
			last = volume(worn.mesh);
			if (progress === 1) expect(worn.crownLeft).toBeCloseTo(0.45, 3);
		}
	});

	it('does not touch at a wide spacing', () => {
		const worn = wearTooth(tooth, tooth, { ...setup, spacing_mm: 10 * high }, 1, { stumpShare: 0.5 });
		expect(worn).toMatchObject({ touches: false, facets: [], crownLeft: 1, plane: null });
		expect(worn.mesh).toBe(tooth);
	});

	it('touches just below the spacing that is told', () => {
		for (const closing_deg of [10, 25, 50]) {
			const spacing_mm = touchingSpacing(tooth, tooth, closing_deg);
			const touches = (shift: number) =>
				wearTooth(tooth, tooth, { closing_deg, spacing_mm: spacing_mm + shift }, 0.5, { stumpShare: 0.5 })
					.touches;
			expect([touches(-0.05), touches(0.05)]).toEqual([true, false]);
		}
	});

	it('bites deeper the closer the teeth stand', () => {
		const offsets = [0.6, 0.5, 0.4].map(
			(share) => bitePlane(high, tooth, { ...setup, spacing_mm: share * high }).offset_mm,
		);
		expect(offsets[1]).toBeLessThan(offsets[0]);
		expect(offsets[2]).toBeLessThan(offsets[1]);
	});

	it('never cuts below the gum', () => {
		for (const closing_deg of [5, 10, 45]) {
			const { mesh } = wearTooth(tooth, tooth, { closing_deg, spacing_mm: 0.05 * high }, 0.6, {
				stumpShare: 0.5,
			});
			let lowest = Infinity;
			const facet = mesh.regions!;
			for (let f = 0; f < facet.length; f++)
				if (facet[f] === 3)
					for (let k = 0; k < 3; k++)
						lowest = Math.min(lowest, mesh.positions[3 * mesh.indices[3 * f + k] + 1]);
			expect(lowest).toBeGreaterThan(0.05 * high);
		}
	});
});

describe('opposingMove', () => {
	it('shuts the tip to its depth beside the standing tooth, and opens past its tip', () => {
		const points = (open: number) => opposingPoints(tooth, opposingMove(setup, open, high, high));
		const lowest = (open: number) => Math.min(...points(open).filter((_, i) => i % 3 === 1));
		expect(lowest(0)).toBeCloseTo(SHUT_TIP * high, 4);
		expect(lowest(1)).toBeGreaterThan(high);
	});
});
