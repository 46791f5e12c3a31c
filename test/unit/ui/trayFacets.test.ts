import { expect, it } from 'vitest';
import type { SpecimenView } from '../../../src/lib/content/view';
import { FACETS, trayFacets, type Wanted } from '../../../src/lib/ui/table/trayFacets';
import { LIVING, trayValues } from '../../../src/lib/ui/table/trayValues';

const NONE: Wanted = { animal: [], feeding: [], found: [], part: [] };
const tooth = (id: string, animal: string, bed: string | null, part: string): SpecimenView =>
	({
		id,
		group: { id: animal, living: bed === null },
		bed: bed === null ? null : { id: bed },
		part,
	}) as unknown as SpecimenView;
const DRAWER = [
	tooth('1', 'lizard', 'marl', 'shed-crown'),
	tooth('2', 'lizard', 'marl', 'germ'),
	tooth('3', 'lizard', 'clay', 'shed-crown'),
	tooth('4', 'gharial', null, 'shed-crown'),
	tooth('5', 'python', null, 'rooted-tooth'),
];
const USES = { 1: 'cut', 2: 'cut', 3: 'pierce', 4: 'pierce' };
const sort = (wanted: Partial<Wanted>) =>
	trayFacets(DRAWER, { ...NONE, ...wanted }, (one) => trayValues(one, USES));
const ids = (wanted: Partial<Wanted>) => sort(wanted).shown.map(({ id }) => id);
const counts = (wanted: Partial<Wanted>, facet: (typeof FACETS)[number]) =>
	Object.fromEntries(sort(wanted).options[facet].map(({ value, count }) => [value, count]));

it('shows all teeth in their order while nothing is wanted', () => {
	expect(ids({})).toEqual(['1', '2', '3', '4', '5']);
	expect(counts({}, 'animal')).toEqual({ lizard: 3, gharial: 1, python: 1 });
	expect(counts({}, 'found')).toEqual({ marl: 2, clay: 1, [LIVING]: 2 });
});

it('takes any of the values of one facet and all of the facets', () => {
	expect(ids({ animal: ['lizard'] })).toEqual(['1', '2', '3']);
	expect(ids({ animal: ['lizard', 'python'] })).toEqual(['1', '2', '3', '5']);
	expect(ids({ animal: ['lizard'], found: ['marl'], part: ['shed-crown'] })).toEqual(['1']);
	expect(ids({ feeding: ['pierce'] })).toEqual(['3', '4']);
	expect(ids({ animal: ['python'], part: ['germ'] })).toEqual([]);
});

it('counts what each value would leave with the other facets as they are', () => {
	const wanted = { part: ['shed-crown'] };
	expect(counts(wanted, 'animal')).toEqual({ lizard: 2, gharial: 1, python: 0 });
	// a facet's own choice does not change its own counts
	expect(counts(wanted, 'part')).toEqual({ 'shed-crown': 3, germ: 1, 'rooted-tooth': 1 });
	for (const { value, count } of sort(wanted).options.animal)
		expect(ids({ ...wanted, animal: [value] })).toHaveLength(count);
});

it('offers a value that has left the exhibit as long as it is wanted, so that it can be given up', () => {
	expect(counts({ animal: ['gone'] }, 'animal')).toMatchObject({ gone: 0 });
	expect(ids({ animal: ['gone'] })).toEqual([]);
});

it('a tooth without a value of a facet is left out where that facet is asked for', () => {
	expect(ids({ feeding: ['cut', 'pierce'] })).toEqual(['1', '2', '3', '4']);
	expect(counts({}, 'feeding')).toEqual({ cut: 2, pierce: 2 });
});
