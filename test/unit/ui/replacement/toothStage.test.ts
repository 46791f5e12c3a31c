import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CYCLE_SHARES } from '../../../../src/lib/domain/replacement/cycleShares';
import { MOST_WORN, toothStage } from '../../../../src/lib/ui/replacement/toothStage';

const FALLS = 1 - CYCLE_SHARES.empty;

describe('toothStage', () => {
	it('keeps every length within a full crown and its root', () =>
		fc.assert(
			fc.property(fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), (phase) => {
				const tooth = toothStage(phase);
				for (const share of [tooth.crown, tooth.root, tooth.next, tooth.nextDepth, tooth.leans]) {
					expect(share).toBeGreaterThanOrEqual(0);
					expect(share).toBeLessThanOrEqual(1);
				}
				expect(tooth.worn).toBeLessThanOrEqual(MOST_WORN);
			}),
		));

	it('goes from the old crown to the next without a jump at the gum', () => {
		expect(toothStage(0).crown).toBeCloseTo(0, 6);
		expect(toothStage(FALLS - 1e-9).crown).toBeCloseTo(1, 6);
		expect(toothStage(FALLS).crown).toBe(0);
		// the next crown is whole and lies just under the gum when it is its turn
		expect(toothStage(1 - 1e-9).next).toBeCloseTo(1, 6);
		expect(toothStage(1 - 1e-9).nextDepth).toBeCloseTo(0, 6);
	});

	it('lets the root go before the crown falls, and the crown fall only then', () => {
		expect(toothStage(0.45).root).toBeGreaterThan(0.6);
		expect(toothStage(FALLS - 1e-6).root).toBeLessThan(0.1);
		expect(toothStage(FALLS - 1e-6).falling).toBeNull();
		expect(toothStage(FALLS + 1e-6).falling).toBeCloseTo(0, 3);
	});
});
