import { describe, expect, it } from 'vitest';
import { loadContent } from '../../../src/lib/content/loadContent';
import { memoryReader } from './memoryReader';
import { contentWith, VALID_CONTENT } from './validContent';
import { feedingWith, VALID_FEEDING } from './validFeeding';

const load = (files: Record<string, string>) => loadContent(memoryReader(files));

describe('the folder feeding/', () => {
	it('becomes part of the exhibit without a problem', async () => {
		const { draft, problems } = await load(contentWith(VALID_FEEDING));
		expect(problems).toEqual([]);
		expect(draft!.feeding).toMatchObject({
			thresholds: { preyOverTooth: [5, 40], edges: { fullShare: 0.15 }, sidePull_deg: 20 },
			crown: {
				strength_MPa: { value: 338, source: 'leidy-1865' },
				enamel: { E_GPa: { value: 80 }, nu: { value: 0.3 } },
			},
			guilds: [{ id: 'crush', corner: 'crush', bands: { slenderness: [0.1, 1.2], tip: [0.22, 1.5] } }],
			materials: [
				{ id: 'skin', edges: 'help', standIn: false },
				{ id: 'bone', standIn: true, elastic: { E_GPa: { value: 20 } } },
			],
			prey: [{ id: 'turtle', shell: { radius_mm: { value: 80 } } }],
			jaws: [{ id: 'lizard', teeth: 12, stops: [{ traits: { lens: 0 } }, { traits: { lens: 0.5 } }] }],
			ridges: [{ id: 'grip', sourcesFor: ['leidy-1865'], sourcesAgainst: [] }],
			everyday: [{ id: 'apple', mass_kg: { value: 0.1 } }],
		});
	});

	it('need not be there', async () => {
		const { draft, problems } = await load({ ...VALID_CONTENT });
		expect(problems).toEqual([]);
		expect(draft).not.toHaveProperty('feeding');
	});

	it('is missed when the exhibit shows the room', async () => {
		const { problems } = await load({
			...VALID_CONTENT,
			'exhibit.yaml': VALID_CONTENT['exhibit.yaml'].replace('[compare]', '[compare, feeding]'),
		});
		expect(new Set(problems.map(({ id }) => id))).toEqual(
			new Set(['feeding-part-missing', 'missing-translation']),
		);
		expect(problems.map(({ file }) => file)).toContain('feeding/thresholds.yaml');
	});

	it('a prey with an unknown source is left out, the rest stays', async () => {
		const { draft, problems } = await load(
			contentWith(feedingWith('feeding/prey/turtle.yaml', 'sources: [leidy-1865]', 'sources: [leidy-1856]')),
		);
		expect(problems.map(({ id, file, line }) => [id, file, line])).toEqual([
			['unknown-source', 'feeding/prey/turtle.yaml', 6],
		]);
		expect(draft!.feeding!.prey).toEqual([]);
		expect(draft!.feeding!.jaws).toHaveLength(1);
	});

	it('a misspelt key is explained with its unit', async () => {
		const { problems } = await load(
			contentWith(feedingWith('feeding/crown.yaml', 'strength_mpa:', 'strength_gpa:')),
		);
		expect(problems).toMatchObject([
			{ id: 'wrong-unit', line: 1, message: expect.stringContaining('pressures are in megapascals') },
		]);
	});
});
