import { readFileSync } from 'node:fs';
import path from 'node:path';
import { render } from 'svelte/server';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { SpecimenView } from '../../../src/lib/content/view';
import PanelHost from './PanelHost.svelte';
import { edgesAt, ridgesAt, sampleTooth, type SampleChanges } from './sampleTooth';

/** The panel uses nothing of a specimen but what is compared. */
const specimen = (changes: SampleChanges) => sampleTooth(changes) as unknown as SpecimenView;
const BARE = specimen({ id: 'bare', group: 'a', measures: { ...edgesAt(), crownHeight_mm: 12.34 } });
const RICH = specimen({
	id: 'rich',
	group: 'b',
	part: 'rooted-tooth',
	measures: {
		...edgesAt(0, 180),
		...ridgesAt(...Array.from({ length: 20 }, (_, i) => i * 18)),
		crownHeight_mm: 40,
		crownHeightRatio: 4.2,
		crownBaseRatio: 0.6,
		curvature_deg: 35,
		tipRadius_mm: 2,
	},
});

function panel(lang: string, a: SpecimenView, b: SpecimenView, onshow?: () => void): string {
	const file = path.resolve(__dirname, `../../../content/ui/${lang}.yaml`);
	const ui = parse(readFileSync(file, 'utf8')) as Record<string, string>;
	return render(PanelHost, { props: { lang, ui, a, b, all: [a, b], onshow } }).body;
}

/** Text of the page without tags, spaces brought to one. */
const words = (html: string): string => html.replace(/<[^>]*>/g, ' ').replace(/\s+/gu, ' ');

describe('Differences', () => {
	it('lists the most telling differences in order, each with both values', () => {
		const html = panel('en', BARE, RICH);
		const traits = [...html.matchAll(/data-trait="([^"]+)"/g)].map((match) => match[1]);
		// eight differ; at first the five most telling are shown
		expect(traits).toHaveLength(5);
		expect(traits[0]).toBe('carinae');
		expect(html).toMatch(/<ol[^>]*role="list"[^>]*aria-label="What differs"/);
		const text = words(html);
		expect(text).toContain('Tooth 1 has no sharp edge. Tooth 2 has 2.');
		expect(text).toMatch(/Sharp edges 1 Tooth 1: 0 2 Tooth 2: 2/);
		expect(text).toContain('Show all 8');
		expect(html).toMatch(/aria-expanded="false"/);
	});

	it('announces the most telling difference politely', () => {
		const status = /<p[^>]*role="status"[^>]*>([^<]*)</.exec(panel('en', BARE, RICH));
		expect(status?.[1]).toBe('The most telling difference: Tooth 1 has no sharp edge. Tooth 2 has 2.');
		const none = /<p[^>]*role="status"[^>]*>([^<]*)</.exec(panel('en', BARE, BARE));
		expect(none?.[1]).toBe('Nothing that can be measured differs.');
	});

	it('has a named button for each entry only where something can be shown', () => {
		expect(panel('en', BARE, RICH)).not.toContain('Show me');
		const html = panel('en', BARE, RICH, () => undefined);
		const names = [...html.matchAll(/aria-label="Show me: ([^"]+)"/g)].map((match) => match[1]);
		expect(names).toHaveLength(5);
		expect(new Set(names).size).toBe(5);
		expect(names[0]).toBe('Sharp edges');
	});

	it('offers what differs and how they are alike, the first of them chosen', () => {
		const html = panel('en', BARE, RICH);
		expect(words(html)).toMatch(/What differs\s+How they are alike/);
		expect([...html.matchAll(/aria-pressed="(true|false)"/g)].map((match) => match[1])).toEqual([
			'true',
			'false',
		]);
	});

	it.each([
		['fr', 'La dent 1 n’a aucun bord tranchant. La dent 2 en a 2.', '12,3 mm'],
		['es', 'El diente 1 no tiene ningún filo cortante. El diente 2 tiene 2.', '12,3 mm'],
	])('speaks %s', (lang, sentence, height) => {
		const taller = specimen({ id: 'taller', group: 'c', measures: { ...edgesAt(0), crownHeight_mm: 40 } });
		const text = words(panel(lang, BARE, taller));
		expect(text).toContain(height);
		expect(words(panel(lang, BARE, RICH))).toContain(sentence);
	});
});
