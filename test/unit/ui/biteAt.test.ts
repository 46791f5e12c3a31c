import { describe, expect, it } from 'vitest';
import type { Bite, BitePoint } from '../../../src/lib/domain/feeding/bite';
import { forceAt, pressEnds, safetyWord, twoFigures } from '../../../src/lib/ui/feeding/biteAt';

const curve: BitePoint[] = [
	{ depth_mm: 0, force_N: 0, layer: 0 },
	{ depth_mm: 2, force_N: 10, layer: 0 },
	// a shell that cracks: two forces at one depth
	{ depth_mm: 2, force_N: 4, layer: 1 },
	{ depth_mm: 4, force_N: 8, layer: 1 },
];

describe('forceAt', () => {
	it('runs straight between points and takes what is left after a crack', () => {
		expect(forceAt(curve, 0)).toBe(0);
		expect(forceAt(curve, 1)).toBe(5);
		expect(forceAt(curve, 2)).toBe(4);
		expect(forceAt(curve, 3)).toBe(6);
	});
	it('stays at the ends beyond them, and is nothing without a curve', () => {
		expect(forceAt(curve, -1)).toBe(0);
		expect(forceAt(curve, 9)).toBe(8);
		expect(forceAt([], 1)).toBe(0);
	});
});

describe('pressEnds', () => {
	const bite = (snapsAt_mm: number | null): Bite => ({ snapsAt_mm, goal_mm: 4 }) as Bite;
	it('goes to the goal, or to where the crown snaps', () => {
		expect(pressEnds(bite(null))).toBe(1);
		expect(pressEnds(bite(1))).toBe(0.25);
	});
});

describe('safetyWord', () => {
	it('never calls safe what snaps', () => {
		expect([0.99, 1, 1.99, 2, 4.99, 5, Infinity].map(safetyWord)).toEqual([
			'snaps',
			'risky',
			'risky',
			'holds',
			'holds',
			'easily',
			'easily',
		]);
	});
});

describe('twoFigures', () => {
	it('keeps what a model can bear', () => {
		expect([1234, 98.7, 0.0456, 6, 0, -3, Infinity].map(twoFigures)).toEqual([1200, 99, 0.046, 6, 0, 0, 0]);
	});
});
