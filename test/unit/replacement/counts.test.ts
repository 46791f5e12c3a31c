import { describe, expect, it } from 'vitest';
import { fallCount } from '../../../src/lib/domain/replacement/fallCount';
import { heapSize } from '../../../src/lib/domain/replacement/heapSize';
import {
	DAYS_A_YEAR,
	formedTeeth,
	shedPerYear,
	slowingGenerations,
} from '../../../src/lib/domain/replacement/shedCounts';

const just = (value: number) => ({ from: value, to: value });

describe('fallCount', () => {
	it('counts teeth with the spread that its ranges leave', () => {
		const count = fallCount({
			positions: { from: 60, to: 80 },
			period_d: { from: 50, to: 100 },
			years: 10,
		});
		expect(count.least).toBeCloseTo((60 * 3652.5) / 100, 9);
		expect(count.most).toBeCloseTo((80 * 3652.5) / 50, 9);
		expect(count.middle).toBeCloseTo((70 * 3652.5) / 75, 9);
		expect(count.perSecond * 86400 * DAYS_A_YEAR).toBeCloseTo(count.perYear, 9);
	});

	it('a slowing period gives fewer teeth than its beginning, more than its end', () => {
		const life = DAYS_A_YEAR * 20;
		const slowing = slowingGenerations(100, 400, life);
		expect(slowing).toBeLessThan(life / 100);
		expect(slowing).toBeGreaterThan(life / 400);
		// nearly constant meets constant
		expect(slowingGenerations(100, 100.001, life)).toBeCloseTo(life / 100, 2);
		expect(slowingGenerations(100, 100, life)).toBeCloseTo(life / 100, 9);
		// the integral of 1/T, summed day by day
		let sum = 0;
		for (let day = 0; day < life; day++) sum += 1 / (100 * Math.exp((Math.log(4) / life) * (day + 0.5)));
		expect(slowing).toBeCloseTo(sum, 4);
		const count = fallCount({ positions: just(40), period_d: just(100), lastPeriod_d: just(400), years: 20 });
		expect(count.middle).toBeCloseTo(40 * slowing, 9);
	});

	it('teeth begun are those shed and those still in the jaw', () => {
		expect(formedTeeth(1000, 60, 2)).toBe(1180);
		expect(shedPerYear(60, DAYS_A_YEAR)).toBe(60);
	});
});

describe('heapSize', () => {
	it('is a cone of the volume of teeth and air', () => {
		const heap = heapSize(4000, 550, { packing: 0.55, slope_deg: 30 });
		expect(heap.volume_cm3).toBeCloseTo(4000, 9);
		expect((Math.PI * (heap.width_cm / 2) ** 2 * heap.height_cm) / 3).toBeCloseTo(4000, 6);
		expect(heap.height_cm / (heap.width_cm / 2)).toBeCloseTo(Math.tan(Math.PI / 6), 9);
	});

	it('eight times the teeth make a heap twice as high', () => {
		expect(heapSize(8000, 300).height_cm / heapSize(1000, 300).height_cm).toBeCloseTo(2, 9);
	});

	it('packs closer when shaken down', () => {
		expect(heapSize(100, 300, { packing: 0.64, slope_deg: 30 }).volume_cm3).toBeLessThan(
			heapSize(100, 300, { packing: 0.5, slope_deg: 30 }).volume_cm3,
		);
	});
});
