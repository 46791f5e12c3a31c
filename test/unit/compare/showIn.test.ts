import { describe, expect, it } from 'vitest';
import { sideAt } from '../../../src/lib/domain/compare/crownRelief';
import { showIn } from '../../../src/lib/domain/compare/showIn';
import { TRAIT_IDS } from '../../../src/lib/domain/compare/traits';
import { edgesAt, ridgesAt, sampleForm, sampleTooth } from './sampleTooth';

const edged = (...angles: number[]) => sampleTooth({ measures: edgesAt(...angles) });
const half = (from: number) => Array.from({ length: 12 }, (_, i) => from + i * 15);

describe('sideAt', () => {
	it('finds the nearest of the four sides', () => {
		expect([0, 44, 46, 90, 180, 226, 270, 316, 359, -90, 720].map(sideAt)).toEqual([
			...['distal', 'distal', 'labial', 'labial', 'mesial', 'lingual'],
			...['lingual', 'distal', 'distal', 'lingual', 'distal'],
		]);
	});
});

describe('showIn', () => {
	it('looks edge-on at an edge that only one of them has', () => {
		expect(showIn('carinae', edged(0, 180), edged())).toBe('distal');
		expect(showIn('carinae', edged(0, 180), edged(0))).toBe('mesial');
		expect(showIn('carinae', edged(0, 180, 270), edged(0, 180))).toBe('lingual');
		expect(showIn('carinae', edged(90, 270), edged())).toBe('lingual');
		expect(showIn('carinae', edged(0, 180), edged(5, 175))).toBe('distal');
		expect(showIn('carinae', edged(), edged())).toBe('distal');
	});

	it('looks edge-on at the saw', () => {
		const saw = sampleTooth({ facts: { form: sampleForm({ carinae_deg: [180], serrationsPer5mm: 9 }) } });
		expect(showIn('serrations', saw, edged(0, 180))).toBe('mesial');
	});

	it('looks from the tip at sections and from the lip at outlines', () => {
		const [a, b] = [sampleTooth(), sampleTooth()];
		expect((['section', 'roundness'] as const).map((id) => showIn(id, a, b))).toEqual(['apical', 'apical']);
		expect((['slenderness', 'curvature', 'tip', 'size'] as const).map((id) => showIn(id, a, b))).toEqual(
			Array(4).fill('labial'),
		);
	});

	it('looks at ridges where only one of them has any', () => {
		const bare = sampleTooth();
		const lingual = sampleTooth({ measures: ridgesAt(...half(188)) });
		const labial = sampleTooth({ measures: ridgesAt(...half(8)) });
		const all = sampleTooth({ measures: ridgesAt(...half(8), ...half(188)) });
		expect(showIn('ridges', bare, lingual)).toBe('lingual');
		expect(showIn('ridges', bare, labial)).toBe('labial');
		expect(showIn('ridges', bare, all)).toBe('labial');
		expect(showIn('ridgeSide', all, lingual)).toBe('labial');
		expect(showIn('ridgeSide', all, labial)).toBe('lingual');
		expect(showIn('ridgeSide', lingual, lingual)).toBe('lingual');
	});

	it('looks into the pit, from the base where there is none', () => {
		const rooted = sampleTooth({ part: 'rooted-tooth' });
		const model = sampleTooth({ facts: { form: sampleForm({ root: 'resorbed', pitSide: 'lingual' }) } });
		const scan = sampleTooth({ part: 'shed-crown', features: [{ kind: 'pit', where_deg: 85 }] });
		expect(showIn('root', rooted, rooted)).toBe('basal');
		expect(showIn('root', rooted, model)).toBe('lingual');
		expect(showIn('root', scan, rooted)).toBe('labial');
		// on a mesh whose labial side looks along -z the angles of its features run the other way
		const turned = sampleTooth({ features: scan.features, facts: { labial: '-z' } });
		expect(showIn('root', turned, rooted)).toBe('lingual');
	});

	it('looks at the largest facet of the more worn one', () => {
		const facet = (where: 'apical' | 'labial' | 'mesial', area_mm2: number) =>
			sampleTooth({ measures: { facets: [{ where, area_mm2, normal: [0, 1, 0] }] } });
		expect(showIn('wear', facet('labial', 3), facet('mesial', 4))).toBe('mesial');
		expect(showIn('wear', facet('labial', 3), sampleTooth())).toBe('labial');
		expect(showIn('tipWorn', facet('apical', 3), sampleTooth())).toBe('apical');
		expect(showIn('wear', sampleTooth(), sampleTooth())).toBe('labial');
		const marked = sampleTooth({ features: [{ kind: 'facet', where_deg: 180 }] });
		expect(showIn('wear', sampleTooth(), marked)).toBe('mesial');
		const stump = sampleTooth({ facts: { form: sampleForm({ tipWorn: true }) } });
		expect(showIn('wear', stump, sampleTooth())).toBe('apical');
	});

	it('is the same whichever tooth comes first', () => {
		const facet = (where: 'labial' | 'mesial') =>
			sampleTooth({ measures: { facets: [{ where, area_mm2: 3, normal: [0, 1, 0] }] } });
		const teeth = [
			edged(),
			facet('labial'),
			facet('mesial'),
			sampleTooth({ facts: { form: sampleForm({ root: 'resorbed', pitSide: 'lingual' }) } }),
			edged(0, 180, 270),
			sampleTooth({ measures: ridgesAt(...half(188)) }),
			sampleTooth({ facts: { form: sampleForm({ root: 'resorbed', pitSide: 'mesial', tipWorn: true }) } }),
		];
		for (const a of teeth)
			for (const b of teeth) for (const id of TRAIT_IDS) expect(showIn(id, a, b)).toBe(showIn(id, b, a));
	});
});
