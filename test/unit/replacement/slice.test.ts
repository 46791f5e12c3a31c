import { describe, expect, it } from 'vitest';
import { generationsPresent } from '../../../src/lib/domain/replacement/dailyLines';
import {
	cutSlice,
	dentineSlice,
	linesBetween,
	widthOffAxis,
} from '../../../src/lib/domain/replacement/dentineSlice';
import { seededRandom } from '../../../src/lib/domain/random/seededRandom';

describe('dentineSlice', () => {
	it.each([1, 2, 3, 40])('has as many lines as days, whoever counts (seed %i)', (seed) => {
		for (const age_d of [12, 233, 511]) {
			const slice = dentineSlice({ age_d, lineWidth_um: 10.9 }, seededRandom(seed));
			expect(linesBetween(slice, 0, slice.thickness_um + 1e-6)).toBe(age_d);
			expect(slice.thickness_um).toBeCloseTo(age_d * 10.9, 6);
			slice.lines_um.forEach((at, i) => expect(at).toBeGreaterThan(i === 0 ? 0 : slice.lines_um[i - 1]));
			// counted anywhere across the slice the number stays true; only a width measured there misleads
			const cut = cutSlice(slice, 0.8);
			expect(linesBetween(cut, 0, Infinity)).toBe(age_d);
			expect(cut.seemingAge_d).toBeGreaterThan(age_d * 1.2);
		}
	});

	it('is irregular, and the same for the same seed', () => {
		const make = (seed: number) => dentineSlice({ age_d: 60, lineWidth_um: 16 }, seededRandom(seed));
		const gaps = Array.from(make(5).lines_um).map((at, i, all) => at - (all[i - 1] ?? 0));
		expect(Math.max(...gaps) / Math.min(...gaps)).toBeGreaterThan(1.2);
		expect(make(5)).toEqual(make(5));
		expect(make(5).lines_um).not.toEqual(make(6).lines_um);
	});

	it('marks one line in 11 to 13 as strong', () => {
		const strong = [...dentineSlice({ age_d: 300, lineWidth_um: 20 }, seededRandom(2)).strong];
		const gaps = strong.slice(1).map((at, i) => at - strong[i]);
		expect(Math.min(...gaps)).toBeGreaterThanOrEqual(11);
		expect(Math.max(...gaps)).toBeLessThanOrEqual(13);
	});

	it('has lines that narrow from the axis to the edge', () => {
		const widths = [0, 0.25, 0.5, 0.75, 1].map((at) => widthOffAxis({ edgeLoss: 0.36 }, at));
		expect(widths[0]).toBe(1);
		expect(widths[4]).toBeCloseTo(0.64, 12);
		widths.slice(1).forEach((width, i) => expect(width).toBeLessThan(widths[i]));
	});
});

describe('generationsPresent', () => {
	it('is the age of the oldest tooth over the period, rounded up', () => {
		expect(generationsPresent(511, 278)).toBe(2);
		expect(generationsPresent(90, 30)).toBe(3);
		expect(generationsPresent(91, 30)).toBe(4);
	});
});
