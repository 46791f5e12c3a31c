import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadLabels } from '../../../src/lib/ui/spreadLabels';

describe('spreadLabels', () => {
	it('leaves alone what has room', () => {
		expect(spreadLabels([10, 40, 90], 20, 0, 100)).toEqual([10, 40, 90]);
	});

	it('moves two that touch apart, about their middle', () => {
		expect(spreadLabels([48, 52], 20, 0, 100)).toEqual([40, 60]);
	});

	it('keeps to the ends', () => {
		expect(spreadLabels([95, 99, 100], 20, 0, 100)).toEqual([60, 80, 100]);
		expect(spreadLabels([-5, 0], 20, 0, 100)).toEqual([0, 20]);
	});

	it('gives nothing for nothing', () => {
		expect(spreadLabels([], 20, 0, 100)).toEqual([]);
	});

	it('keeps the order and the gap, and the ends wherever there is room', () => {
		const places = fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { maxLength: 10 });
		fc.assert(
			fc.property(places, (unsorted) => {
				const at = [...unsorted].sort((a, b) => a - b);
				const spread = spreadLabels(at, 10, 0, 100);
				expect(spread).toHaveLength(at.length);
				for (let i = 1; i < spread.length; i++) {
					expect(spread[i] - spread[i - 1]).toBeGreaterThanOrEqual(10 - 1e-9);
				}
				if (spread.length > 0) {
					expect(spread[0]).toBeGreaterThanOrEqual(-1e-9);
					expect(spread[spread.length - 1]).toBeLessThanOrEqual(100 + 1e-9);
				}
			}),
		);
	});
});
