import path from 'node:path';
import { expect, it } from 'vitest';
import { loadContent } from '../../../src/lib/content/loadContent';
import type { SpecimenView } from '../../../src/lib/content/view';
import { fsReader } from '../../../src/lib/server/fsReader';
import { mainUses } from '../../../src/lib/server/mainUses';
import { demoTeeth } from '../compare/demoTeeth';

it('says nothing without the folder that tells how shapes are read', () => {
	expect(mainUses([], undefined)).toEqual({});
});

it('tells the demo teeth apart as their guilds are told apart in print', async () => {
	const { draft } = await loadContent(fsReader(path.resolve(__dirname, '../../../content')));
	const teeth = (await demoTeeth()) as unknown as SpecimenView[];
	const uses = mainUses(teeth, draft?.feeding);
	const of = (group: string) => teeth.filter((tooth) => tooth.group.id === group).map(({ id }) => uses[id]);
	// Massare 1987 (J. Vert. Paleontol. 7: 121-137): bulbs crush, slender needles pierce, two-edged blades cut
	expect(new Set(of('globidens'))).toEqual(new Set(['crush']));
	expect(new Set(of('elasmosaurid'))).toEqual(new Set(['pierce']));
	expect(new Set(of('tyrannosaurid'))).toEqual(new Set(['cut']));
	expect(Object.keys(uses)).toHaveLength(teeth.length);
});
