import { beforeAll, describe, expect, it } from 'vitest';
import type { Feeding } from '../../../src/lib/content/feedingContent';
import { jawAt, jawFormAt, jawRow } from '../../../src/lib/domain/feeding/jawRow';
import { checkForm } from '../../../src/lib/domain/tooth/checkForm';
import { demoFeeding } from '../../reference/feedingContent';

let feeding: Feeding;
beforeAll(async () => {
	feeding = await demoFeeding();
});

describe('a jaw from front to back', () => {
	it('has a form that can be sculpted at every place', () => {
		for (const jaw of feeding.jaws)
			for (let at = 0; at <= 1; at += 0.01)
				expect(checkForm(jawFormAt(jaw, at, feeding.thresholds))).toBeNull();
	});

	it('passes through its stops and never beyond its neighbours', () => {
		for (const jaw of feeding.jaws)
			for (const [i, stop] of jaw.stops.entries()) {
				expect(jawAt(jaw, stop.at).crownHeight_mm).toBeCloseTo(stop.crownHeight_mm, 9);
				expect(jawAt(jaw, stop.at).traits.slenderness).toBeCloseTo(stop.traits.slenderness, 9);
				const next = jaw.stops[i + 1];
				if (!next) continue;
				const between = jawAt(jaw, (stop.at + next.at) / 2).crownHeight_mm;
				expect(between).toBeGreaterThanOrEqual(Math.min(stop.crownHeight_mm, next.crownHeight_mm));
				expect(between).toBeLessThanOrEqual(Math.max(stop.crownHeight_mm, next.crownHeight_mm));
			}
	});

	it('has its teeth evenly along it', () => {
		const [jaw] = feeding.jaws;
		const row = jawRow(jaw, feeding.thresholds);
		expect(row).toHaveLength(jaw.teeth);
		expect(row[0].at).toBe(0);
		expect(row[row.length - 1].at).toBe(1);
		expect(row.map(({ index }) => index)).toEqual(row.map((_, i) => i));
		expect(row[0].form.crownHeight_mm).toBeCloseTo(jaw.stops[0].crownHeight_mm, 9);
	});

	// D'Amore et al. 2019, PeerJ 7: e6485: size rises and falls along a crocodile's row, and shape changes steadily front to back
	it('a crocodile has its tallest tooth near the front, and ever stouter ones behind', () => {
		const jaw = feeding.jaws.find(({ id }) => id === 'crocodile')!;
		const row = jawRow(jaw, feeding.thresholds);
		const tallest = row.reduce((best, tooth) => (tooth.crownHeight_mm > best.crownHeight_mm ? tooth : best));
		expect(tallest.at).toBeGreaterThan(0);
		expect(tallest.at).toBeLessThan(0.4);
		const slenderness = row.map(({ traits }) => traits.slenderness);
		expect(slenderness.every((s, i) => i === 0 || s <= slenderness[i - 1])).toBe(true);
	});
});
