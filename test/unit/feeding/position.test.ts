import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	asPosition,
	distanceBetween,
	fromPlane,
	MIDDLE,
	positionOf,
	pullTo,
	toPlane,
} from '../../../src/lib/domain/feeding/position';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const anywhere = fc
	.tuple(share, share, share)
	.filter((s) => s[0] + s[1] + s[2] > 0.01)
	.map(([a, b, c]) => asPosition(a, b, c));

describe('places in the triangle', () => {
	it('are shares that sum to 1, whatever is asked', () => {
		fc.assert(
			fc.property(fc.double(), fc.double(), fc.double(), (a, b, c) => {
				const { pierce, cut, crush } = asPosition(a, b, c);
				expect(pierce + cut + crush).toBeCloseTo(1, 9);
				expect(Math.min(pierce, cut, crush)).toBeGreaterThanOrEqual(0);
			}),
		);
		expect(asPosition(NaN, 1, 1)).toEqual(MIDDLE);
		expect(asPosition(0, 0, 0)).toEqual(MIDDLE);
	});

	it('come back from their pulls, corners and sides included', () => {
		fc.assert(
			fc.property(anywhere, (at) => {
				expect(distanceBetween(positionOf(pullTo(at)), at)).toBeLessThan(1e-9);
			}),
		);
		expect(positionOf(pullTo({ pierce: 0, cut: 1, crush: 0 })).cut).toBeCloseTo(1, 12);
	});

	it('come back from the plane', () => {
		fc.assert(
			fc.property(anywhere, (at) => {
				expect(distanceBetween(fromPlane(...toPlane(at)), at)).toBeLessThan(1e-9);
			}),
		);
	});

	it('corners are a side apart, and points outside are led in', () => {
		const [pierce, cut, crush] = [asPosition(1, 0, 0), asPosition(0, 1, 0), asPosition(0, 0, 1)];
		for (const [a, b] of [
			[pierce, cut],
			[cut, crush],
			[crush, pierce],
		])
			expect(distanceBetween(a, b)).toBeCloseTo(1, 12);
		expect(fromPlane(0.5, -3)).toMatchObject({ crush: 0 });
		expect(fromPlane(-2, 0)).toMatchObject({ cut: 0, crush: 0, pierce: 1 });
	});

	it('no pull is the middle, and pulls count by their differences only', () => {
		expect(distanceBetween(positionOf([0, 0, 0]), MIDDLE)).toBeLessThan(1e-12);
		expect(distanceBetween(positionOf([9, 8, 7]), positionOf([2, 1, 0]))).toBeLessThan(1e-12);
		expect(positionOf([900, 0, 0]).pierce).toBe(1);
	});
});
