import { beforeAll, describe, expect, it } from 'vitest';
import { loadContent } from '../../../src/lib/content/loadContent';
import type { Feeding } from '../../../src/lib/content/feedingContent';
import type { Source } from '../../../src/lib/content/exhibit';
import { composeFeeding, feedingSources } from '../../../src/lib/server/composeFeeding';
import { feedingFor } from '../../../src/lib/server/feedingFor';
import { memoryReader } from '../content/memoryReader';
import { contentWith } from '../content/validContent';
import { feedingWith, VALID_FEEDING } from '../content/validFeeding';

let feeding: Feeding;
let sources: Map<string, Source>;
beforeAll(async () => {
	const { draft } = await loadContent(memoryReader(contentWith(VALID_FEEDING)));
	feeding = draft!.feeding!;
	sources = new Map(draft!.sources.map((source) => [source.id, source]));
});

describe('feedingFor', () => {
	it('gives numbers with their sources, and words in the language asked for', () => {
		const view = feedingFor(feeding, sources, 'fr', 'en');
		expect(view.corners.crush.name).toBe('Broyer');
		expect(view.prey[0]).toMatchObject({
			name: 'Tortue',
			layers: [
				{ thickness_mm: 1, material: { name: 'Peau', resists_MPa: 20 } },
				{ material: { standIn: true } },
			],
			shell: { radius_mm: 80, strength_MPa: 67 },
		});
		expect(view.prey[0].layers[0].material.numbers.resists_MPa).toMatchObject({
			value: 20,
			low: 10,
			high: 30,
			recalled: false,
			source: { tag: 'seen' },
		});
		expect(view.jaws[0].stops.map(({ name }) => name)).toEqual(['Crocs', 'Crochets']);
		expect(view.everyday[0]).toMatchObject({ mass_kg: 0.1, message: expect.stringContaining('pomme') });
		expect(view.thresholds).not.toHaveProperty('sources');
	});

	it('falls back on the first language for what is not translated', () => {
		const { fr: _, ...words } = feeding.words;
		expect(feedingFor({ ...feeding, words }, sources, 'fr', 'en').prey[0].name).toBe('Turtle');
	});

	it('marks what is recalled, by its source or by its own tag', () => {
		const memory = new Map(sources).set('leidy-1865', { ...sources.get('leidy-1865')!, tag: 'memory' });
		const marked = feedingFor(feeding, memory, 'en', 'en');
		expect(marked.prey[0].layers[0].material).toMatchObject({
			recalled: true,
			numbers: { resists_MPa: { recalled: true } },
		});
		expect(marked.crown.recalled).toBe(true);
		expect(feedingFor(feeding, sources, 'en', 'en').crown.recalled).toBe(false);
	});
});

describe('composeFeeding', () => {
	it('keeps the last good version of what an error has taken away', async () => {
		const { draft } = await loadContent(
			memoryReader(
				contentWith(feedingWith('feeding/prey/turtle.yaml', 'material: bone,', 'material: bones,')),
			),
		);
		expect(draft!.feeding!.prey).toEqual([]);
		expect(composeFeeding(draft!.feeding, feeding, true)!.prey).toEqual(feeding.prey);
		expect(composeFeeding(draft!.feeding, feeding, false)!.prey).toEqual([]);
		expect(composeFeeding(undefined, feeding, true)).toBe(feeding);
		expect(composeFeeding(undefined, feeding, false)).toBeUndefined();
	});

	it('names every source that it rests on', () => {
		expect(new Set(feedingSources(feeding))).toEqual(new Set(['leidy-1865', 'skerrow-model']));
		expect(feedingSources(undefined)).toEqual([]);
	});
});
