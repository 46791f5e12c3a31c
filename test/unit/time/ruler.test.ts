import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	RULER_START_MA,
	rulerAges,
	rulerBar,
	rulerPosition,
	rulerStart,
	rulerTicks,
} from '../../../src/lib/domain/time/ruler';

describe('rulerPosition', () => {
	it('runs evenly from 100 million years ago to today', () => {
		expect(rulerPosition(100)).toBe(0);
		expect(rulerPosition(75)).toBe(0.25);
		expect(rulerPosition(50)).toBe(0.5);
		expect(rulerPosition(0)).toBe(1);
	});

	it('holds what is older at the beginning', () => {
		expect(rulerPosition(100.5)).toBe(0);
		expect(rulerPosition(4600)).toBe(0);
	});

	it('is not a number for what is no age', () => {
		expect(rulerPosition(-1)).toBeNaN();
		expect(rulerPosition(NaN)).toBeNaN();
		expect(rulerPosition(10, 0)).toBeNaN();
	});

	it('never puts an older age to the right of a younger one', () => {
		const age = fc.double({ min: 0, max: 300, noNaN: true });
		fc.assert(
			fc.property(age, age, (a, b) => rulerPosition(Math.max(a, b)) <= rulerPosition(Math.min(a, b))),
		);
	});
});

describe('rulerBar', () => {
	it('gives both ends of a span', () => {
		expect(rulerBar(84, 80)).toEqual({
			from: expect.closeTo(0.16, 12),
			to: expect.closeTo(0.2, 12),
			cutOff: false,
		});
	});

	it('says when a span begins before the ruler', () => {
		expect(rulerBar(120, 90)).toEqual({ from: 0, to: expect.closeTo(0.1, 12), cutOff: true });
	});

	it('is null for a span that is over before the ruler begins, or is no span', () => {
		expect(rulerBar(150, 120)).toBeNull();
		expect(rulerBar(300, 260, 300)).not.toBeNull();
		expect(rulerBar(80, 84)).toBeNull();
		expect(rulerBar(NaN, 1)).toBeNull();
		expect(rulerBar(10, -1)).toBeNull();
	});
});

describe('rulerStart', () => {
	it('is 100 million years ago as long as everything fits', () => {
		expect(rulerStart([])).toBe(100);
		expect(rulerStart([84, 70])).toBe(100);
		expect(rulerStart([100])).toBe(100);
	});

	it('goes back in steps of 50 for older rocks of the chart', () => {
		expect(rulerStart([100.5])).toBe(150);
		expect(rulerStart([70, 150.1])).toBe(200);
		expect(rulerStart([251])).toBe(300);
	});

	it('does not stretch for what lies outside the chart', () => {
		expect(rulerStart([400, 70])).toBe(100);
		expect(rulerStart([NaN])).toBe(100);
	});
});

describe('rulerAges', () => {
	it('covers the whole ruler without a gap, Cenomanian to today', () => {
		const ages = rulerAges();
		expect(ages[0]).toMatchObject({ stage: { id: 'cenomanian' }, from: 0 });
		expect(ages.at(-1)).toMatchObject({ stage: { id: 'holocene' }, to: 1 });
		for (let i = 1; i < ages.length; i++) expect(ages[i].from).toBe(ages[i - 1].to);
	});

	it('takes in coarser divisions on a longer ruler', () => {
		expect(
			rulerAges(200)
				.map(({ stage }) => stage.id)
				.slice(0, 3),
		).toEqual(['jurassic', 'early-cretaceous', 'cenomanian']);
	});
});

describe('rulerTicks', () => {
	it('are round numbers from the beginning to today', () => {
		expect(rulerTicks(RULER_START_MA)).toEqual([100, 80, 60, 40, 20, 0]);
		expect(rulerTicks(150)).toEqual([140, 120, 100, 80, 60, 40, 20, 0]);
		expect(rulerTicks(250)).toEqual([250, 200, 150, 100, 50, 0]);
	});
});
