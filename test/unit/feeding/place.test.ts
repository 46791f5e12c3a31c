import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Feeding } from '../../../src/lib/content/feedingContent';
import { evidenceOf, type Evidence } from '../../../src/lib/domain/feeding/evidence';
import { formAt } from '../../../src/lib/domain/feeding/formAt';
import { normalBelow, rankGuilds } from '../../../src/lib/domain/feeding/guilds';
import { placeTooth, PULLING_TRAITS } from '../../../src/lib/domain/feeding/place';
import { asPosition, distanceBetween, MIDDLE } from '../../../src/lib/domain/feeding/position';
import { tableEvidence } from '../../../src/lib/domain/feeding/tableEvidence';
import { measureCrown } from '../../../src/lib/domain/measure/measureCrown';
import type { ToothForm } from '../../../src/lib/domain/tooth/form';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import { demoFeeding } from '../../reference/feedingContent';

let feeding: Feeding;
beforeAll(async () => {
	feeding = await demoFeeding();
});

const measured = (form: ToothForm) => {
	const made = sculpt(form);
	if (!made.ok) throw new Error(made.problem.code);
	const found = measureCrown(made.value.mesh, { marks: made.value.marks });
	if (!found.ok) throw new Error(found.problem.code);
	return found.value;
};

describe('placeTooth', () => {
	it('puts a tooth of which nothing is known in the middle, anywhere', () => {
		const { position, uncertainty, reasons } = placeTooth(
			tableEvidence({}, feeding.thresholds),
			feeding.thresholds,
		);
		expect(distanceBetween(position, MIDDLE)).toBeLessThan(1e-9);
		expect(uncertainty).toBeGreaterThan(0.5);
		expect(
			reasons.every(({ value, towards, strength }) => value === null && towards === null && strength === 0),
		).toBe(true);
	});

	it('what is missing widens the region and moves nothing by itself', () => {
		const whole = tableEvidence(
			{ slenderness: 1.9, roundness: 0.85, tip: 'pointed', edges: 'weak', section: 'oval', curve: 'slight' },
			feeding.thresholds,
		);
		const { uncertainty } = placeTooth(whole, feeding.thresholds);
		for (const trait of PULLING_TRAITS) {
			if (trait === 'wear') continue;
			const without: Evidence = {
				...whole,
				[trait]: {
					...whole[trait],
					value: null,
					spread: feeding.thresholds.unknown[trait],
					note: 'not-recorded',
				},
			};
			const placed = placeTooth(without, feeding.thresholds);
			expect(placed.uncertainty).toBeGreaterThan(uncertainty);
			expect(placed.reasons.find((reason) => reason.trait === trait)).toMatchObject({
				value: null,
				note: 'not-recorded',
			});
		}
	});

	it('a worn tip widens the region too, and the tooth is not taken for a low one', () => {
		const form = formAt(asPosition(1, 1, 1), 30, feeding.thresholds);
		const fresh = evidenceOf(measured(form), feeding.thresholds);
		const worn = evidenceOf(measured({ ...form, wear: { tipWornTo_mm: 22 } }), feeding.thresholds);
		expect(worn.slenderness.note).toBe('tip-worn');
		expect(worn.tip.value).toBeNull();
		expect(worn.slenderness.value! / fresh.slenderness.value!).toBeGreaterThan(0.85);
		const [a, b] = [fresh, worn].map((evidence) => placeTooth(evidence, feeding.thresholds));
		expect(b.uncertainty).toBeGreaterThan(a.uncertainty);
	});

	it('gives its reasons trait by trait, and they add up to the place', () => {
		const evidence = tableEvidence(
			{ slenderness: 3.6, roundness: 1, tip: 'needle', edges: 'none' },
			feeding.thresholds,
		);
		const { reasons, position } = placeTooth(evidence, feeding.thresholds);
		expect(reasons.map(({ trait }) => trait).sort()).toEqual([...PULLING_TRAITS].sort());
		expect(reasons[0]).toMatchObject({
			trait: 'slenderness',
			value: 3.6,
			towards: 'pierce',
			away: 'crush',
			strength: 1,
		});
		expect(reasons.find(({ trait }) => trait === 'edges')).toMatchObject({ away: 'cut', towards: null });
		expect(reasons.find(({ trait }) => trait === 'tip')).toMatchObject({ away: 'crush', towards: null });
		expect(reasons.every(({ strength }, i) => i === 0 || strength <= reasons[i - 1].strength)).toBe(true);
		const sum = [0, 1, 2].map((k) => reasons.reduce((total, { pull }) => total + pull[k], 0));
		expect(sum[0]).toBeGreaterThan(sum[1]);
		expect(position.pierce).toBeGreaterThan(0.8);
	});

	it('more slender is never less pierce; sharper edges are never less cut; blunter is never less crush', () => {
		const base = {
			slenderness: 1.9,
			roundness: 0.85,
			tip: 'pointed',
			edges: 'weak',
			section: 'oval',
			curve: 'slight',
		} as const;
		const evidence = () => tableEvidence(base, feeding.thresholds);
		const at = (trait: 'slenderness' | 'edges' | 'tip', value: number) => {
			const known = evidence();
			return placeTooth({ ...known, [trait]: { ...known[trait], value } }, feeding.thresholds).position;
		};
		const between = (min: number, max: number) =>
			fc.tuple(fc.double({ min, max, noNaN: true }), fc.double({ min: 1, max: 1.5, noNaN: true }));
		fc.assert(
			fc.property(
				between(0.4, 6),
				between(0.01, 1),
				between(0.03, 0.7),
				([s, more], [e, sharper], [t, blunter]) => {
					expect(at('slenderness', s * more).pierce).toBeGreaterThanOrEqual(
						at('slenderness', s).pierce - 1e-9,
					);
					expect(at('edges', e * sharper).cut).toBeGreaterThanOrEqual(at('edges', e).cut - 1e-9);
					expect(at('tip', t * blunter).crush).toBeGreaterThanOrEqual(at('tip', t).crush - 1e-9);
				},
			),
		);
	});

	it('the region lies round the place and inside the triangle, never a point', () => {
		const evidence = tableEvidence(
			{ slenderness: 1.7, roundness: 0.37, tip: 'pointed', edges: 'serrated' },
			feeding.thresholds,
		);
		const { region, position, uncertainty } = placeTooth(evidence, feeding.thresholds);
		expect(region.length).toBeGreaterThan(20);
		for (const place of region) {
			expect(Math.min(...Object.values(place))).toBeGreaterThanOrEqual(0);
			expect(place.pierce + place.cut + place.crush).toBeCloseTo(1, 9);
		}
		expect(Math.max(...region.map((place) => distanceBetween(place, position)))).toBeGreaterThan(0.02);
		expect(uncertainty).toBeGreaterThan(0);
	});
});

describe('rankGuilds', () => {
	it('knows nothing where nothing is known', () => {
		const ranked = rankGuilds(tableEvidence({}, feeding.thresholds), feeding.guilds);
		expect(ranked[0].probability).toBeLessThan(0.3);
		expect(ranked.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9);
	});

	it('says how each band fits, worst first', () => {
		const [first] = rankGuilds(
			tableEvidence({ slenderness: 0.8, tip: 'dome', edges: 'none' }, feeding.thresholds),
			feeding.guilds,
		);
		expect(first.id).toBe('crush');
		expect(first.fits.map(({ fit }) => fit)).toEqual(
			[...first.fits.map(({ fit }) => fit)].sort((a, b) => a - b),
		);
	});

	// Abramowitz & Stegun 1964, table 26.1
	it.each([
		[0, 0.5],
		[1, 0.8413447],
		[-1.96, 0.0249979],
		[3, 0.9986501],
		[-9, 0],
	])('normal distribution below %d is %d', (z, share) => {
		expect(normalBelow(z)).toBeCloseTo(share, 6);
	});
});
