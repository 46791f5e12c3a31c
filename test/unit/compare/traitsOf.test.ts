import { describe, expect, it } from 'vitest';
import { TRAIT_IDS, TRAITS } from '../../../src/lib/domain/compare/traits';
import { traitsOf } from '../../../src/lib/domain/compare/traitsOf';
import { edgesAt, ridgesAt, sampleForm, sampleTooth } from './sampleTooth';

describe('traitsOf', () => {
	it('reads the traits of a measured scan', () => {
		const traits = traitsOf(sampleTooth({ part: 'shed-crown' }));
		expect(Object.keys(traits).sort()).toEqual([...TRAIT_IDS].sort());
		for (const id of TRAIT_IDS) {
			expect(traits[id]).toMatchObject({ id, kind: TRAITS[id].kind });
			expect('unknown' in traits[id]).toBe(traits[id].value === null);
		}
		expect(traits.carinae).toMatchObject({ value: 2, from: 'measured' });
		expect(traits.section).toMatchObject({ value: 'round', from: 'measured' });
		expect(traits.slenderness).toMatchObject({ value: 2, unit: 'ratio' });
		expect(traits.roundness.value).toBe(1);
		expect(traits.curvature).toMatchObject({ value: 10, unit: 'deg' });
		expect(traits.tip).toMatchObject({ value: 0.05, unit: 'share' });
		expect(traits.size).toMatchObject({ value: 20, unit: 'mm' });
		expect(traits.ridges).toMatchObject({ value: 'none', count: 0 });
		expect(traits.ridgeSide).toMatchObject({ value: null, unknown: 'no-ridges' });
		expect(traits.tipWorn.value).toBe(false);
		expect(traits.wear.value).toBe(0);
		// a scan says nothing of serrations; of its root the curator does
		expect(traits.serrations).toMatchObject({ value: null, unknown: 'not-recorded' });
		expect(traits.root).toMatchObject({ value: 'resorbed', from: 'record' });
	});

	it('takes counts and kinds from the form that a model was made from', () => {
		const form = sampleForm({
			carinae_deg: [0, 180, 270],
			serrationsPer5mm: 10,
			ridges: { count: 20, sides: 'lingual' },
			section: 'triangular',
			root: 'open',
		});
		const traits = traitsOf(sampleTooth({ part: 'crown', facts: { form } }));
		expect(traits.carinae).toMatchObject({ value: 3, from: 'form' });
		expect(traits.ridges).toMatchObject({ value: 'many', count: 20, from: 'form' });
		expect(traits.ridgeSide).toMatchObject({ value: 'lingual', from: 'form' });
		expect(traits.section).toMatchObject({ value: 'triangular', from: 'form' });
		expect(traits.serrations).toMatchObject({ value: true, from: 'form' });
		expect(traits.root).toMatchObject({ value: 'open', from: 'form' });
		expect(traits.slenderness.from).toBe('measured');
		// where one shape passes into another the form gives none, the mesh does
		const between = traitsOf(sampleTooth({ facts: { form: sampleForm({ section: null }) } }));
		expect(between.section).toMatchObject({ value: 'round', from: 'measured' });
	});

	it('says why it does not know', () => {
		const unclear = traitsOf(
			sampleTooth({
				part: 'jaw-piece',
				measures: {
					carinaCount: null,
					ridgeCount: null,
					tipRadius_mm: null,
					curvature_deg: null,
					sections: [],
					warnings: [{ code: 'tip-not-resolved', message: '' }],
				},
			}),
		);
		for (const id of ['carinae', 'ridges', 'ridgeSide', 'section', 'tip', 'curvature', 'wear'] as const)
			expect(unclear[id]).toMatchObject({ value: null, unknown: 'not-measurable' });
		expect(unclear.tipWorn.value).toBeNull();
		expect(unclear.root).toMatchObject({ value: null, unknown: 'in-the-jaw' });
		const stump = traitsOf(
			sampleTooth({
				measures: {
					tipRadius_mm: null,
					curvature_deg: null,
					warnings: ['tip-flat', 'too-low-for-curvature'].map((code) => ({ code, message: '' })),
				},
			}),
		);
		expect(stump.tip.unknown).toBe('worn-flat');
		expect(stump.tipWorn.value).toBe(true);
		expect(stump.curvature.unknown).toBe('too-low');
		const edgeless = sampleTooth({
			measures: { carinaCount: 0, carinae: [] },
			facts: { form: sampleForm({ carinae_deg: [] }) },
		});
		expect(traitsOf(edgeless).serrations).toMatchObject({ value: null, unknown: 'no-edges' });
	});

	it('tells ridges on one side from ridges all round', () => {
		const side = (angles: number[], labial: '+z' | null = '+z') =>
			traitsOf(sampleTooth({ measures: ridgesAt(...angles), facts: { labial } })).ridgeSide.value;
		const every = (step: number, from: number, to: number) =>
			Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => from + i * step);
		expect(side(every(15, 0, 345))).toBe('all');
		expect(side(every(15, 0, 180))).toBe('labial');
		expect(side(every(15, 180, 360))).toBe('lingual');
		expect(side(every(15, 180, 360), null)).toBe('one-side');
		expect(side(every(15, 0, 345), null)).toBe('all');
	});

	it('tells edges along the jaw from edges across it', () => {
		const side = (angles: number[], labial: '+z' | null = '+z') =>
			traitsOf(sampleTooth({ measures: edgesAt(...angles), facts: { labial } })).edgeSide;
		expect(side([10, 170]).value).toBe('along');
		expect(side([0])).toMatchObject({ value: null, unknown: 'no-pair' });
		expect(side([90, 275]).value).toBe('across');
		expect(side([0, 180, 270])).toMatchObject({ value: null, unknown: 'no-pair' });
		expect(side([])).toMatchObject({ value: null, unknown: 'no-edges' });
		expect(side([0, 180], null)).toMatchObject({ value: null, unknown: 'sides-not-known' });
	});

	it('counts ridges anywhere up the crown: few under sixteen', () => {
		const amount = (count: number) =>
			traitsOf(sampleTooth({ measures: ridgesAt(...Array.from({ length: count }, (_, i) => i * 20)) }))
				.ridges;
		expect(amount(1)).toMatchObject({ value: 'few', count: 1 });
		expect(amount(15)).toMatchObject({ value: 'few', count: 15 });
		expect(amount(16)).toMatchObject({ value: 'many', count: 16 });
		// none at mid-crown, ten lower down
		const low = { ...ridgesAt(0, 36, 72, 108, 144, 180, 216, 252, 288, 324), ridgeCount: 0 };
		expect(traitsOf(sampleTooth({ measures: low })).ridges).toMatchObject({ value: 'few', count: 10 });
	});

	it('takes wear as a share of the crown’s outer surface', () => {
		// the cone's wall is pi * 5 * sqrt(20^2 + 5^2) = 323.8 mm2; its sections give a few per cent less
		const facets = [
			{ area_mm2: 20, normal: [0, 0, 1] as [number, number, number], where: 'labial' as const },
		];
		const scan = traitsOf(sampleTooth({ measures: { facets } }));
		expect(scan.wear.value).toBeGreaterThan(20 / 324);
		expect(scan.wear.value).toBeLessThan(20 / 300);
		const areas = { enamel: 70, carina: 10, ridge: 0, facet: 20, dentine: 0, root: 500, pit: 9, pulp: 90 };
		expect(traitsOf(sampleTooth({ facts: { regionAreas_mm2: areas } })).wear.value).toBeCloseTo(0.2, 12);
		const rough = { warnings: [{ code: 'facets-under-noise', message: '' }] };
		expect(traitsOf(sampleTooth({ measures: rough })).wear).toMatchObject({
			value: null,
			unknown: 'not-measurable',
		});
	});

	it('takes a pit that is marked on a jaw piece’s tooth for a resorbed root', () => {
		const features = [{ kind: 'pit', where_deg: 270 }];
		expect(traitsOf(sampleTooth({ part: 'jaw-piece', features })).root.value).toBe('resorbed');
		expect(traitsOf(sampleTooth({ part: 'rooted-tooth', features })).root.value).toBe('full');
	});
});
