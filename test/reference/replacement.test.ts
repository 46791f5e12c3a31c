import { describe, expect, it } from 'vitest';
import {
	ageFromThickness,
	OFF_AXIS_LOSS,
	offAxisFactor,
	periodFromLines,
	thicknessFromLines,
} from '../../src/lib/domain/replacement/dailyLines';
import { cutSlice, dentineSlice } from '../../src/lib/domain/replacement/dentineSlice';
import { eruptionDay, eruptionOrder } from '../../src/lib/domain/replacement/eruptionOrder';
import { eruptionTime } from '../../src/lib/domain/replacement/eruptionTime';
import { fallCount } from '../../src/lib/domain/replacement/fallCount';
import { inhibitionResult, runInhibition } from '../../src/lib/domain/replacement/inhibition';
import type { Jaw } from '../../src/lib/domain/replacement/jaw';
import { osbornEruption, osbornWave } from '../../src/lib/domain/replacement/osborn';
import { phaseAt } from '../../src/lib/domain/replacement/phaseAt';
import { seededRandom } from '../../src/lib/domain/random/seededRandom';
import { seriesOffset } from '../../src/lib/domain/replacement/seriesOffset';
import { seriesWave } from '../../src/lib/domain/replacement/seriesWave';
import {
	DAYS_A_YEAR,
	shedPerYear,
	shedTeeth,
	slowingGenerations,
} from '../../src/lib/domain/replacement/shedCounts';
import { spacingRegime } from '../../src/lib/domain/replacement/spacingRegime';

// z-spacing: DeMar 1972 (doi:10.1111/j.1558-5646.1972.tb01948.x), Edmund 1960 (doi:10.5962/bhl.title.52196). The
// examples are worked out by hand from t(n, k) = t0 + T (k + (n - 1) / z).
describe('jaw clock by z-spacing', () => {
	const jaw = (spacing: number, period_d: number): Jaw => ({ positions: 10, period_d, spacing });

	it.each([
		{ z: 1, T: 35, days: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0] },
		{ z: 1.6, T: 80, days: [0, 50, 20, 70, 40, 10, 60, 30, 0, 50] },
		{ z: 2, T: 120, days: [0, 60, 0, 60, 0, 60, 0, 60, 0, 60] },
		{ z: 2.2, T: 110, days: [0, 50, 100, 40, 90, 30, 80, 20, 70, 10] },
		{ z: 2.5, T: 100, days: [0, 40, 80, 20, 60, 0, 40, 80, 20, 60] },
		{ z: 3, T: 30, days: [0, 10, 20, 0, 10, 20, 0, 10, 20, 0] },
	])('z = $z, T = $T d: eruption days in one period', ({ z, T, days }) => {
		days.forEach((day, i) => {
			expect(eruptionDay(jaw(z, T), i + 1)).toBeCloseTo(day, 9);
			// the same through the clock itself
			expect((((eruptionTime(jaw(z, T), i + 1, 0) % T) + T + 1e-9) % T) - 1e-9).toBeCloseTo(day, 6);
		});
	});

	it('orders of eruption in one period', () => {
		const order = (z: number, positions = 10) => eruptionOrder({ positions, spacing: z });
		expect(order(1)).toEqual([[1, 2, 3, 4, 5, 6, 7, 8, 9, 10]]);
		expect(order(1.6)).toEqual([[1, 9], [6], [3], [8], [5], [2, 10], [7], [4]]);
		expect(order(2)).toEqual([
			[1, 3, 5, 7, 9],
			[2, 4, 6, 8, 10],
		]);
		expect(order(2.2)).toEqual([[1], [10], [8], [6], [4], [2], [9], [7], [5], [3]]);
		expect(order(2.5)).toEqual([
			[1, 6],
			[4, 9],
			[2, 7],
			[5, 10],
			[3, 8],
		]);
		expect(order(3)).toEqual([
			[1, 4, 7, 10],
			[2, 5, 8],
			[3, 6, 9],
		]);
	});

	it('phases at day 130 with z = 2.5 and T = 100', () => {
		const expected = [0.3, 0.9, 0.5, 0.1, 0.7, 0.3, 0.9, 0.5, 0.1, 0.7];
		expected.forEach((phase, i) => expect(phaseAt(jaw(2.5, 100), i + 1, 130).phase).toBeCloseTo(phase, 9));
	});

	it.each([
		{ z: 1, T: 35, d: 0, direction: 'together', length: Infinity, speed: null },
		{ z: 1.6, T: 80, d: 0.25, direction: 'front-to-back', length: 8, speed: 0.1 },
		{ z: 2, T: 120, d: 0, direction: 'together', length: Infinity, speed: null },
		{ z: 2.2, T: 110, d: -1 / 11, direction: 'back-to-front', length: 22, speed: -0.2 },
		{ z: 2.5, T: 100, d: -0.2, direction: 'back-to-front', length: 10, speed: -0.1 },
		{ z: 3, T: 30, d: -1 / 3, direction: 'back-to-front', length: 6, speed: -0.2 },
	])('z = $z: what every second tooth seems to do', ({ z, T, d, direction, length, speed }) => {
		const wave = seriesWave(z, T, 2);
		expect(wave.offset).toBeCloseTo(d, 9);
		expect(wave.direction).toBe(direction);
		expect(wave.length).toBeCloseTo(length, 9);
		expect(wave.teeth).toBeCloseTo(length / 2, 9);
		if (speed === null) expect(wave.speed_per_d).toBeNull();
		else expect(wave.speed_per_d).toBeCloseTo(speed, 9);
		// L = 2 z / |z - 2| wherever the rule of signs holds
		if (z > 4 / 3 && z !== 2) expect(wave.length).toBeCloseTo((2 * z) / Math.abs(z - 2), 9);
	});

	it('direction depends on the series followed', () => {
		expect(seriesOffset(1.6, 2)).toBeCloseTo(0.25, 12);
		expect(seriesOffset(1.6, 3)).toBeCloseTo(-0.125, 12);
		expect(seriesOffset(2.5, 2)).toBeCloseTo(-0.2, 12);
		expect(seriesOffset(2.5, 3)).toBeCloseTo(0.2, 12);
		expect(seriesOffset(3, 3)).toBe(0);
		expect(seriesOffset(1, 1)).toBe(0);
		// glass lizard, neighbours nearly in step: z = 1.1 and z = 0.9
		expect(seriesOffset(1.1, 1)).toBeCloseTo(-0.0909, 4);
		expect(seriesOffset(0.9, 1)).toBeCloseTo(0.1111, 4);
	});

	it('half a cycle is not rounded to even', () => {
		for (const z of [2, 2 / 3, 0.4]) expect(seriesOffset(z, 1)).toBeCloseTo(-0.5, 12);
		expect(seriesWave(2, 100, 1).direction).toBe('either');
	});

	it('the rule of signs holds for 4/3 < z < 4 and not beyond', () => {
		for (let z = 1.34; z < 4; z += 0.01) {
			if (Math.abs(z - 2) < 1e-9) continue;
			expect(spacingRegime(z).ruleHolds, `z = ${z}`).toBe(true);
			expect(Math.sign(seriesOffset(z, 2)), `z = ${z}`).toBe(z < 2 ? 1 : -1);
		}
		expect(spacingRegime(1.3).ruleHolds).toBe(false);
		expect(Math.sign(seriesOffset(1.3, 2))).toBe(-1);
		expect([1, 1.6, 2, 2.5].map((z) => spacingRegime(z).name)).toEqual([
			'all-together',
			'front-to-back',
			'alternate',
			'back-to-front',
		]);
		expect([1, 2, 3].map((z) => spacingRegime(z).clearestSeries)).toEqual([1, 2, 3]);
	});
});

// Osborn 1974, Journal of Theoretical Biology 46 (abstract): t = k exp(a r + b n), w = 2 (a - b) / (a - 2 b).
describe("Osborn's waves", () => {
	it.each([
		{ a: 0.25, b: 0.1, w: 6, z: 2.5, length: 10, growth: 1.284 },
		{ a: 0.22, b: 0.1, w: 12, z: 2.2, length: 22, growth: 1.246 },
	])('a = $a, b = $b', ({ a, b, w, z, length, growth }) => {
		const wave = osbornWave({ a, b });
		expect(wave.length).toBeCloseTo(w, 9);
		expect(wave.spacing).toBeCloseTo(z, 9);
		expect(wave.periodGrowth).toBeCloseTo(growth, 3);
		expect(seriesWave(z, 100, 2).length).toBeCloseTo(length, 9);
		// his wave is shorter than ours by 2 / (z - 2)
		expect(length - wave.length!).toBeCloseTo(2 / (z - 2), 9);
		const period = (r: number) => osbornEruption({ a, b }, 3, r + 1) - osbornEruption({ a, b }, 3, r);
		expect(period(5) / period(4)).toBeCloseTo(growth, 3);
	});

	it('needs a > 2 b for waves that travel forward', () => {
		expect(osbornWave({ a: 0.2, b: 0.1 }).length).toBeNull();
		expect(osbornWave({ a: 0.15, b: 0.1 }).length).toBeNull();
	});
});

// Our own toy of Osborn's idea; the values were worked out beforehand by a separate program: 20 positions, 6 beginnings,
// 80 periods.
describe('inhibition', () => {
	const mean = (p: number, seeds: number[]) => {
		const results = seeds.map((seed) =>
			inhibitionResult(
				runInhibition({ positions: 20, period_d: 100, inhibition: p }, 8000, seededRandom(seed)),
			),
		);
		const average = (pick: (r: (typeof results)[number]) => number) =>
			results.reduce((sum, r) => sum + pick(r), 0) / results.length;
		const periods = results.map((r) => r.period_d / 100).sort((a, b) => a - b);
		return {
			offset: average((r) => r.neighbourOffset),
			period: average((r) => r.period_d) / 100,
			usualPeriod: periods[Math.floor(periods.length / 2)],
		};
	};
	const six = [1, 2, 3, 4, 5, 6];

	it('neighbours come to alternate: .500 at p = .50', () => {
		expect(mean(0.5, six).offset).toBeCloseTo(0.5, 6);
		expect(Math.abs(mean(0.3, six).offset - 0.354)).toBeLessThan(0.03);
		expect(Math.abs(mean(0.45, six).offset - 0.452)).toBeLessThan(0.02);
	});

	it('the period stays T up to p = .50, then stretches', () => {
		for (const p of [0.3, 0.45, 0.5]) expect(mean(p, six).period).toBeCloseTo(1, 6);
		// where two orders meet, a few jaws stretch more: the usual one counts
		expect(mean(0.55, six).usualPeriod).toBeCloseTo(1.1, 6);
		expect(mean(0.6, six).usualPeriod).toBeCloseTo(1.25, 2);
		expect(Math.abs(mean(0.7, six).usualPeriod - 1.66)).toBeLessThan(0.02);
		expect(mean(0.7, six).offset).toBeLessThan(0.45);
	});
});

describe('daily lines', () => {
	it('period from the two teeth of one position: 511 - 233 = 278 d (ages: Chinsamy and others 2012, doi:10.2113/gssgfbull.183.2.85)', () => {
		expect(periodFromLines(511, 233)).toBe(278);
	});

	it('95 lines of 16.24 um are 1,542.8 um thick (doi:10.1371/journal.pone.0248163)', () => {
		expect(thicknessFromLines(95, 16.24)).toBeCloseTo(1542.8, 6);
		expect(ageFromThickness(1542.8, 16.24)).toBeCloseTo(95, 9);
	});

	it('lines up to 36 % narrower off the axis make a tooth seem 1.5625 times as old (Kosch & Zanno 2020, PeerJ 9918)', () => {
		expect(OFF_AXIS_LOSS).toBe(0.36);
		expect(offAxisFactor(0.36)).toBeCloseTo(1.5625, 9);
		const slice = dentineSlice({ age_d: 200, lineWidth_um: 12 }, seededRandom(4));
		expect(cutSlice(slice, 1).seemingAge_d / slice.age_d).toBeCloseTo(1.5625, 6);
		expect(cutSlice(slice, 0).seemingAge_d).toBeCloseTo(200, 6);
	});

	it('line counts against watching: 109 d against 120 d is -9.17 % (Erickson 1992)', () => {
		expect((100 * (109 - 120)) / 120).toBeCloseTo(-9.17, 2);
	});

	it('950 lines are 2.60 years (Kear and others 2017, doi:10.1371/journal.pone.0172759)', () => {
		expect(thicknessFromLines(950, 1) / DAYS_A_YEAR).toBeCloseTo(2.6, 2);
	});
});

describe('shed teeth', () => {
	it('777 / 56 = 13.875, the press said about 14 (D’Emic and others 2019, doi:10.1371/journal.pone.0224734)', () => {
		expect(shedPerYear(1, 56) / shedPerYear(1, 777)).toBeCloseTo(13.875, 9);
	});

	it('alligator: 80 positions, each replaced 50 times, or once a year for 35 years', () => {
		expect(shedTeeth(80, 50, 1)).toBe(4000);
		expect(shedTeeth(80, 35, 1)).toBe(2800);
	});

	it('a period that grows from 110 d to 2 years in 35 years: 52.1 generations, 4,171 teeth', () => {
		const time = 35 * DAYS_A_YEAR;
		expect(slowingGenerations(110, 2 * DAYS_A_YEAR, time)).toBeCloseTo(52.1, 1);
		expect(80 * slowingGenerations(110, 2 * DAYS_A_YEAR, time)).toBeCloseTo(4171, -0.5);
		// to one year only: over the press's "up to 50 times"
		expect(slowingGenerations(110, DAYS_A_YEAR, time)).toBeCloseTo(67.7, 1);
		const count = fallCount({
			positions: { from: 80, to: 80 },
			period_d: { from: 110, to: 110 },
			lastPeriod_d: { from: 2 * DAYS_A_YEAR, to: 2 * DAYS_A_YEAR },
			years: 35,
		});
		expect(Math.round(count.middle)).toBe(4171);
		expect(count.least).toBeCloseTo(count.most, 9);
	});

	it('Nile crocodile: 64 to 68 places, 45 times (Poole 1961, doi:10.1111/j.1469-7998.1961.tb06083.x): 2,880 to 3,060', () => {
		const count = fallCount({
			positions: { from: 64, to: 68 },
			period_d: { from: 100, to: 100 },
			years: (45 * 100) / DAYS_A_YEAR,
		});
		expect(count.least).toBeCloseTo(2880, 6);
		expect(count.most).toBeCloseTo(3060, 6);
		expect(count.generations).toBeCloseTo(45, 9);
	});

	it.each([
		['Komodo dragon', 60, 40, 548],
		['leopard gecko, upper jaw', 40, 30, 487],
		['spinosaurid', 68, 63.5, 391],
	])('%s: %d places at %d d are %d teeth a year', (_, positions, period, perYear) => {
		expect(Math.round(shedPerYear(positions, period))).toBe(perYear);
	});

	it('Diplodocus: 48 places at 35 d are a tooth each 0.73 d', () => {
		expect(DAYS_A_YEAR / shedPerYear(48, 35)).toBeCloseTo(0.73, 2);
	});
});
