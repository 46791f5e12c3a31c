import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { ExhibitDraft } from '../../../src/lib/content/draft';
import { loadContent } from '../../../src/lib/content/loadContent';
import { REPLACEMENT_TABLES, type ReplacementContent } from '../../../src/lib/content/replacement/types';
import { LIFE_STAGES } from '../../../src/lib/domain/replacement/lifeStage';
import { ARRANGEMENTS } from '../../../src/lib/domain/replacement/lifeForm';
import { wearTooth } from '../../../src/lib/domain/replacement/wearTooth';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import type { ToothForm } from '../../../src/lib/domain/tooth/form';
import { fsReader } from '../../../src/lib/server/fsReader';
import { memoryReader } from './memoryReader';
import { contentWith } from './validContent';

const CONTENT = path.resolve(__dirname, '../../../content');
let draft: ExhibitDraft;
let tables: ReplacementContent;
beforeAll(async () => {
	const loaded = await loadContent(fsReader(CONTENT));
	expect(loaded.problems.filter(({ file }) => file.startsWith('replacement/'))).toEqual([]);
	draft = loaded.draft!;
	tables = draft.replacement!;
});

const entries = () => REPLACEMENT_TABLES.flatMap((table) => tables[table].map((entry) => ({ table, entry })));
const meshOf = (form: ToothForm) => {
	const made = sculpt(form);
	if (!made.ok) throw new Error(made.problem.code);
	return made.value.mesh;
};

describe('content/replacement of the demo exhibit', () => {
	it('has entries in every table, each in every language', () => {
		const languages = draft.languages.map(({ code }) => code);
		expect(languages).toEqual(['en', 'fr', 'es']);
		for (const table of REPLACEMENT_TABLES) expect(tables[table].length, table).toBeGreaterThan(1);
		for (const { table, entry } of entries())
			expect(Object.keys(entry.text), `${table} ${entry.id}`).toEqual(languages);
	});

	it('speaks in sentences of 25 words at most, in lines of 15 (19 in French and Spanish)', () => {
		const words = (text: string) => text.split(/\s+/).length;
		for (const { table, entry } of entries())
			for (const [code, { name, line, more }] of Object.entries(entry.text)) {
				const where = `${table} ${entry.id} ${code}`;
				expect(words(name), where).toBeLessThanOrEqual(8);
				expect(words(line), where).toBeLessThanOrEqual(code === 'en' ? 15 : 19);
				for (const sentence of (more ?? '').split(/(?<=[.?!])\s+/))
					expect(words(sentence), `${where}: ${sentence}`).toBeLessThanOrEqual(25);
			}
	});

	it('has all six stages in order, and all arrangements', () => {
		expect(tables.stages.map(({ id }) => id)).toEqual([...LIFE_STAGES]);
		expect(tables.arrangements.map(({ id }) => id).sort()).toEqual([...ARRANGEMENTS].sort());
	});

	it('gives every number a source that stands in sources.yaml', () => {
		const known = new Set(draft.sources.map(({ id }) => id));
		const check = (value: unknown): void => {
			if (typeof value !== 'object' || value === null) return;
			if ('source' in value) expect(known.has(value.source as string), String(value.source)).toBe(true);
			for (const inner of Object.values(value)) check(inner);
		};
		for (const { entry } of entries()) check(entry);
	});

	// what was only recalled or read about must carry a tag, so that the screen marks it
	it('marks what is recalled, read about, assumed or worked out here', () => {
		const animal = (id: string) => tables.animals.find((one) => one.id === id)!;
		expect(animal('tyrannosaurus').period_d!.tag).toBe('memory');
		expect(animal('mosasaurus-hoffmanni').line_um!.tag).toBe('second-hand');
		expect(animal('mosasaurus-hoffmanni').period_d!.tag).toBe('ours');
		expect(animal('alligator-young').positions!.tag).toBe('second-hand');
		expect(animal('stegosaur-yakutia').age!.days.tag).toBe('second-hand');
		expect(animal('komodo-dragon').period_d!.tag).toBe('seen');
		for (const count of tables.counts) expect(count.years.tag).toBe('ours');
	});

	// lines at a cut are no periods (Gren & Lindgren 2013)
	it('gives no period to animals of which only lines at a cut are known', () => {
		for (const animal of tables.animals)
			if (animal.age?.kind === 'lines') expect(animal.period_d, animal.id).toBeUndefined();
	});

	it('subtracts right: age in use minus age of the successor', () => {
		const { inUse, successor } = tables.slices.find(({ id }) => id === 'mosasaur')!;
		expect(inUse.from - successor!.from).toBe(278);
		expect(tables.animals.find(({ id }) => id === 'mosasaurus-hoffmanni')!.period_d!.from).toBe(278);
	});

	it('has three mysteries with three answers, one of them a crown without bays', () => {
		expect(tables.mysteries.map(({ answer }) => answer).sort()).toEqual(['broken-crown', 'shed', 'torn-out']);
		for (const { form } of tables.mysteries) expect(meshOf(form).indices.length).toBeGreaterThan(3000);
	});

	it('has pairs of teeth that touch, whose facets can be measured, and that wear to a stump', () => {
		for (const { id, tooth, opposing, closing_deg, spacing_mm, stumpShare } of tables.wear) {
			const [standing, other] = [meshOf(tooth), meshOf(opposing ?? tooth)];
			const wear = (progress: number) =>
				wearTooth(standing, other, { closing_deg, spacing_mm }, progress, { stumpShare });
			const half = wear(0.5);
			expect(half.touches, id).toBe(true);
			const facet = half.facets.find(({ where }) => where === 'labial');
			expect(facet, id).toBeDefined();
			expect(Math.abs(facet!.angle_deg - closing_deg), id).toBeLessThan(1);
			expect(wear(1).crownLeft, id).toBeCloseTo(stumpShare, 2);
		}
	});

	it('is absent where the folder has none of its files', async () => {
		const { draft: small, problems } = await loadContent(memoryReader(contentWith({})));
		expect(problems).toEqual([]);
		expect(small).not.toHaveProperty('replacement');
	});
});
