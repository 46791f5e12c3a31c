import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alike } from '../../../src/lib/domain/compare/alike';
import { isAlike } from '../../../src/lib/domain/compare/apart';
import { differences } from '../../../src/lib/domain/compare/differences';
import { TRAIT_IDS, type ComparedTooth } from '../../../src/lib/domain/compare/traits';
import { traitsOf } from '../../../src/lib/domain/compare/traitsOf';
import { edgesAt, ridgesAt, sampleForm, sampleTooth } from './sampleTooth';

/** Any tooth that an exhibit may hold, scans and models, known and unknown. */
const anyTooth: fc.Arbitrary<ComparedTooth> = fc
	.record({
		group: fc.constantFrom('a', 'b', 'c', 'd'),
		part: fc.constantFrom('crown', 'shed-crown', 'rooted-tooth', 'germ', 'jaw-piece' as const),
		ratio: fc.double({ min: 0.5, max: 5, noNaN: true }),
		roundness: fc.double({ min: 0.3, max: 1.2, noNaN: true }),
		height: fc.double({ min: 2, max: 120, noNaN: true }),
		bend: fc.option(fc.double({ min: 0, max: 60, noNaN: true })),
		tip: fc.option(fc.double({ min: 0.05, max: 4, noNaN: true })),
		edges: fc.option(fc.subarray([0, 90, 180, 270])),
		ridges: fc.option(fc.integer({ min: 0, max: 30 })),
		shape: fc.constantFrom(null, 'round', 'oval', 'blade', 'triangular', 'other' as const),
		facet: fc.double({ min: 0, max: 60, noNaN: true }),
		saw: fc.option(fc.integer({ min: 0, max: 20 })),
		labial: fc.constantFrom(null, '+z', '-z' as const),
	})
	.map((t) =>
		sampleTooth({
			group: t.group,
			part: t.part,
			measures: {
				crownHeightRatio: t.ratio,
				crownBaseRatio: t.roundness,
				crownHeight_mm: t.height,
				curvature_deg: t.bend,
				tipRadius_mm: t.tip,
				...(t.edges ? edgesAt(...t.edges) : { carinaCount: null, carinae: [] }),
				...(t.ridges === null
					? { ridgeCount: null, ridges: [] }
					: ridgesAt(...Array.from({ length: t.ridges }, (_, i) => i * 12))),
				sections: sampleTooth().measures.sections.map((section) => ({ ...section, shape: t.shape })),
				facets: t.facet > 5 ? [{ area_mm2: t.facet, normal: [0, 0, 1], where: 'lingual' }] : [],
			},
			facts: { labial: t.labial, form: t.saw === null ? null : sampleForm({ serrationsPer5mm: t.saw }) },
		}),
	);
const exhibit = fc
	.array(anyTooth, { minLength: 2, maxLength: 12 })
	.map((teeth) => teeth.map((tooth, i) => ({ ...tooth, id: `t${i}` })));
const RUNS = { seed: 11, numRuns: 150 };

describe('differences', () => {
	it('puts the more telling first: how well a trait tells groups apart, times how far apart the two are', () => {
		// slenderness tells these groups apart, size does not; the first of a and of b differ in both by half
		const tooth = (group: string, ratio: number, height: number) =>
			sampleTooth({ group, measures: { crownHeightRatio: ratio, crownHeight_mm: height } });
		const all = [
			...[tooth('a', 1, 10), tooth('a', 1.05, 40), tooth('a', 1, 20)],
			...[tooth('b', 2, 20), tooth('b', 2.1, 10), tooth('b', 2, 41)],
			...[tooth('c', 4, 10), tooth('c', 4.2, 40), tooth('c', 4.1, 22)],
		];
		const found = differences(all[0], all[3], all);
		expect(found.map(({ trait }) => trait)).toEqual(['slenderness', 'size']);
		expect(found[0].score).toBeGreaterThan(2 * found[1].score);
		expect(found[0]).toMatchObject({
			a: { value: 1 },
			b: { value: 2 },
			message: { key: 'differ_slenderness', values: { a: 1, b: 2, more: 2, less: 1, times: 2 } },
			show: { view: 'labial' },
		});
	});

	it('says nothing of what it does not know or cannot measure', () => {
		const a = sampleTooth({ measures: { tipRadius_mm: null, crownHeightRatio: 2 } });
		const b = sampleTooth({ measures: { tipRadius_mm: 3, crownHeightRatio: 2.1 } });
		expect(differences(a, b, [a, b])).toEqual([]);
		expect(alike(a, b, [a, b]).map(({ trait }) => trait)).not.toContain('tip');
	});

	it('settles ties by the order of traits', () => {
		const a = sampleTooth({ measures: { ...edgesAt(0, 180), tipRadius_mm: null } });
		const all = [a];
		const b = sampleTooth({ measures: { ...edgesAt(0), crownBaseRatio: 0.5, crownHeightRatio: 4 } });
		const order = differences(a, b, all).map(({ score, trait }) => [-score, TRAIT_IDS.indexOf(trait)]);
		expect(order).toEqual([...order].sort((x, y) => x[0] - y[0] || x[1] - y[1]));
	});

	it('is mirrored when the two are swapped', () => {
		fc.assert(
			fc.property(exhibit, (all) => {
				const [a, b] = all;
				const [there, back] = [differences(a, b, all), differences(b, a, all)];
				expect(back.map(({ trait, score, show }) => ({ trait, score, show }))).toEqual(
					there.map(({ trait, score, show }) => ({ trait, score, show })),
				);
				expect(back.map((entry) => [entry.b, entry.a])).toEqual(there.map((entry) => [entry.a, entry.b]));
				const other = (place: string | number | undefined) =>
					place === undefined ? undefined : 3 - Number(place);
				back.forEach(({ message }, i) => {
					const { a: x, b: y, more, less, has, lacks, times } = there[i].message.values;
					expect(message.values).toMatchObject({ a: y, b: x });
					expect(message.values.times).toBe(times);
					const { values } = message;
					expect([values.more, values.less, values.has, values.lacks]).toEqual(
						[more, less, has, lacks].map(other),
					);
				});
				expect(alike(b, a, all).map(({ trait, score }) => [trait, score])).toEqual(
					alike(a, b, all).map(({ trait, score }) => [trait, score]),
				);
			}),
			RUNS,
		);
	});

	it('stays the same when a copy of the exhibit is added, and in any order of its teeth', () => {
		fc.assert(
			fc.property(exhibit, (all) => {
				const [a, b] = all;
				const copy = structuredClone(all).map((tooth) => ({ ...tooth, id: `copy-${tooth.id}` }));
				expect(differences(a, b, [...all, ...copy])).toEqual(differences(a, b, all));
				expect(differences(a, b, [...all].reverse())).toEqual(differences(a, b, all));
				expect(alike(a, b, [...copy, ...all])).toEqual(alike(a, b, all));
			}),
			RUNS,
		);
	});

	it('puts each trait that both show either here or among what is alike, with scores from 0 to 1', () => {
		fc.assert(
			fc.property(exhibit, (all) => {
				const [a, b] = all;
				const told = [...differences(a, b, all), ...alike(a, b, all)];
				const [x, y] = [traitsOf(a), traitsOf(b)];
				const shown = TRAIT_IDS.filter((id) => isAlike(x[id], y[id]) !== null);
				expect(told.map(({ trait }) => trait).sort()).toEqual([...shown].sort());
				for (const { score } of told) {
					expect(score).toBeGreaterThanOrEqual(0);
					expect(score).toBeLessThanOrEqual(1);
				}
			}),
			RUNS,
		);
	});
});

describe('alike', () => {
	it('puts first what few others share, and what both have before what both lack', () => {
		const tooth = (id: string, edges: number[], ratio: number) =>
			sampleTooth({ id, group: id, measures: { ...edgesAt(...edges), crownHeightRatio: ratio } });
		// two edges are common, the slenderness of a and b is not; neither has ridges, nor has any other
		const a = tooth('a', [0, 180], 4);
		const b = tooth('b', [0, 180], 4.1);
		const all = [a, b, tooth('c', [0, 180], 1), tooth('d', [0, 180], 2), tooth('e', [], 1.5)];
		const found = alike(a, b, all);
		expect(found.slice(0, 2).map(({ trait }) => trait)).toEqual(['slenderness', 'carinae']);
		// 3 of 5 teeth are not as slender: prior 0.75 * 3/5; 1 of 5 has other edges: 0.9 / 5
		expect(found[0].score).toBeCloseTo(0.45, 12);
		expect(found[1].score).toBeCloseTo(0.18, 12);
		// edgeless teeth among edged ones: 4 of 5 have it otherwise, half for what both lack
		const [c, d] = [tooth('f', [], 1), tooth('g', [], 3)];
		const edgeless = alike(c, d, [c, d, ...all.slice(0, 4)]);
		expect(edgeless[0].trait).toBe('carinae');
		expect(edgeless[0].score).toBeCloseTo((0.9 * 4) / 6 / 2, 12);
	});

	it('tells what two equal teeth have in common in full', () => {
		const a = sampleTooth();
		const traits = alike(a, a, [a]).map(({ trait }) => trait);
		expect([...traits].sort()).toEqual(
			[...TRAIT_IDS].filter((id) => id !== 'serrations' && id !== 'ridgeSide').sort(),
		);
		expect(differences(a, a, [a])).toEqual([]);
	});
});
