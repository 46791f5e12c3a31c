import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tableColumns } from '../../../../src/lib/server/table/columns';
import { exportTable } from '../../../../src/lib/server/table/exportTable';
import { newLabel } from '../../../../src/lib/server/table/labelFile';
import { planImport } from '../../../../src/lib/server/table/planImport';
import { specimenCells, type SpecimenFiles } from '../../../../src/lib/server/table/specimenCells';
import type { ImportPlan } from '../../../../src/lib/content/tableImport';
import { VALID_CONTENT } from '../../content/validContent';
import { contextOf, demoFiles, tableFrom } from './samples';

const COLUMNS = tableColumns(['en', 'fr']);

async function plan(text: string, files?: Record<string, string>): Promise<ImportPlan> {
	const planned = await planImport(await contextOf(files), tableFrom(text));
	if (!planned.ok) throw new Error(planned.problem.code);
	return planned.value;
}
const report = ({ rows }: ImportPlan) =>
	rows.map(({ line, id, outcome, changes, why }) => ({
		line,
		id,
		outcome,
		...(changes.length > 0
			? { changes: changes.map(({ column, from, to }) => `${column}: ${from} > ${to}`) }
			: {}),
		...(why ? { why } : {}),
	}));

describe('planImport', () => {
	it('says line by line what is new, changed, unchanged and refused, and keeps notes and order', async () => {
		const made = await plan(
			[
				'Accession number;crown height (cm);part;Title (fr);shelf',
				'SKM 0001;3,81;shed crown;Couronne à bord coupant;7',
				'SKM 0002;;rooted-tooth;;7',
				'SKM 0002;;germ;;7',
				'SKM 0001b;;molar;;7',
			].join('\n'),
		);
		expect(made.columns.map(({ column, leftOut }) => leftOut ?? column)).toEqual([
			'accession',
			'card_crown_height_mm',
			'part',
			'title_fr',
			'unknown',
		]);
		expect(report(made)).toEqual([
			{
				line: 2,
				id: 'skm-0001',
				outcome: 'changed',
				changes: [
					'card_crown_height_mm:  > 38.1',
					'title_fr: Couronne à arête coupante > Couronne à bord coupant',
				],
			},
			{ line: 3, id: 'skm-0002', outcome: 'unchanged' },
			{ line: 4, id: 'skm-0002', outcome: 'refused', why: { code: 'row-twice', found: 'skm-0002' } },
			{
				line: 5,
				id: 'skm-0001b',
				outcome: 'refused',
				why: {
					code: 'not-a-choice',
					column: 'part',
					found: 'molar',
					choices: 'crown, shed-crown, rooted-tooth, germ, jaw-piece',
				},
			},
		]);
		const facts = VALID_CONTENT['specimens/skm-0001/specimen.yaml'];
		const label = VALID_CONTENT['specimens/skm-0001/label.fr.md'];
		expect(made.edits).toEqual([
			{
				path: 'specimens/skm-0001/specimen.yaml',
				before: facts,
				after: facts.replace('features:\n', 'declared: { crown_height_mm: 38.1 }\nfeatures:\n'),
			},
			{
				path: 'specimens/skm-0001/label.fr.md',
				before: label,
				after: label.replace('à arête coupante', 'à bord coupant'),
			},
		]);
	});

	it('refuses what the content check would refuse, in its words', async () => {
		const made = await plan('id,group,licence\nskm-0001,mosasaur,\nskm-0002,,CC BY 4.0\n');
		expect(made.edits).toEqual([]);
		expect(report(made).map(({ outcome, why }) => [outcome, why?.code, why?.message])).toEqual([
			[
				'refused',
				'check',
				'There is no group "mosasaur": groups/mosasaur.yaml does not exist. Did you mean mosasaurus? Write group: mosasaurus',
			],
			[
				'refused',
				'check',
				'"CC BY 4.0" is not the address of a Creative Commons licence or of a RightsStatements.org statement. Write licence: http://creativecommons.org/licenses/by/4.0/',
			],
		]);
	});

	it('refuses the second owner of an accession number', async () => {
		const made = await plan('id,accession\nskm-0002,SKM 0001\n');
		expect(made.rows[0].why).toMatchObject({ code: 'check' });
		expect(made.rows[0].why!.message).toContain('already belongs');
	});

	it('makes a new specimen, which then passes the check but for its scan', async () => {
		const head =
			'accession,group,part,preservation,bed,identified_by,certainty,scan_file,scan_units,licence,rights_holder,sources,title_en,short_en,alt_en,text_en,title_fr,short_fr';
		const row =
			'SKM 0003,mosasaurus,germ,tan,upper-marl,Skerrow Museum,likely,scan.ply,mm,http://creativecommons.org/licenses/by/4.0/,Skerrow Museum,leidy-1865; skerrow-model,A bud,Not yet cut,A small hollow cone,"It grew, but never cut.",Un germe,Jamais sorti';
		const made = await plan(`${head}\n${row}\n`);
		expect(report(made)[0]).toMatchObject({ id: 'skm-0003', outcome: 'new' });
		expect(made.rows[0].notes.join('\n')).toContain('scan.ply');
		expect(made.edits.map(({ path, before }) => [path, before])).toEqual([
			['specimens/skm-0003/specimen.yaml', null],
			['specimens/skm-0003/label.en.md', null],
			['specimens/skm-0003/label.fr.md', null],
		]);
		const files = { ...VALID_CONTENT, 'specimens/skm-0003/scan.ply': 'ply' };
		for (const { path, after } of made.edits) files[path as keyof typeof files] = after;
		// put in, the same table changes nothing
		expect(report(await plan(`${head}\n${row}\n`, files))).toEqual([
			{ line: 2, id: 'skm-0003', outcome: 'unchanged' },
		]);
		const without = await plan('accession,group\nSKM 0009,mosasaurus\n');
		expect(without.rows[0]).toMatchObject({ outcome: 'refused', why: { code: 'needs', column: 'part' } });
	});

	it.each([
		['id,title_en\nskm-0001,=1+1\n', { code: 'formula', column: 'title_en', found: '=1+1' }],
		['id,title_en\nskm-0001,"a\nb"\n', { code: 'line-break', column: 'title_en', found: 'a\nb' }],
		['id,title_en\nskm-0001,a\u0000b\n', { code: 'not-text', column: 'title_en', found: 'a\u0000b' }],
		['id,title_en\nskm-0001,-\n', { code: 'cannot-be-emptied', column: 'title_en', found: '-' }],
		['id,title_en\n../etc,x\n', { code: 'bad-id', found: '../etc' }],
		['id,title_en\n,x\n', { code: 'no-key' }],
		[
			'id,crown height mm\nskm-0001,"1,234"\n',
			{ code: 'which-separator', column: 'card_crown_height_mm', found: '1,234' },
		],
	])('refuses %j', async (text, why) => {
		const made = await plan(text);
		expect(made.rows.map(({ outcome, why: given }) => [outcome, given])).toEqual([['refused', why]]);
		expect(made.edits).toEqual([]);
	});

	it('needs a column that tells the specimens', async () => {
		expect(await planImport(await contextOf(), tableFrom('title_en\nx\n'))).toEqual({
			ok: false,
			problem: { code: 'no-key-column' },
		});
	});

	it('changes nothing when the demo exhibit comes back as it went out', async () => {
		const languages = ['en', 'fr', 'es'];
		const context = await contextOf(demoFiles(), languages);
		expect(context.specimens.length).toBeGreaterThan(10);
		for (const delimiter of [',', ';'] as const) {
			const text = exportTable(context.specimens, tableColumns(languages), delimiter);
			const planned = await planImport(context, tableFrom(text));
			expect(planned.ok && planned.value.rows.map(({ outcome }) => outcome)).toEqual(
				context.specimens.map(() => 'unchanged'),
			);
		}
	});
});

/** Texts that tables and YAML files are known to trip over. */
const nasty = fc
	.array(
		fc.constantFrom(
			'=',
			'+',
			'-',
			'@',
			"'",
			'"',
			',',
			';',
			'\t',
			'#',
			': ',
			'{',
			']',
			'|',
			'é',
			'“',
			'no',
			'0104',
			'a b',
			'&',
			'*',
			'!',
			'%',
			'\\',
			'1,5',
			'🦷',
		),
		{ minLength: 1, maxLength: 6 },
	)
	.map((parts) => parts.join('').trim())
	.filter((text) => text !== '' && !text.includes('\t'));
const body = fc.array(nasty, { minLength: 1, maxLength: 4 }).map((lines) => lines.join('\n').trim());
const value = (key: string) => (key.startsWith('text_') ? body : nasty);
const label = fc.record({ title: nasty, short: nasty, alt: nasty, text: body });

describe('a table going out and coming back', () => {
	const facts = VALID_CONTENT['specimens/skm-0001/specimen.yaml'];
	const context = contextOf();

	it('loses nothing, whatever the labels say', async () => {
		await fc.assert(
			fc.asyncProperty(
				label,
				label,
				fc.constantFrom(',', ';'),
				fc.boolean(),
				async (en, fr, delimiter, wide) => {
					const specimens: SpecimenFiles[] = [
						{
							id: 'skm-0001',
							facts,
							labels: new Map([
								['en', newLabel(en)],
								['fr', newLabel(fr)],
							]),
						},
					];
					const cells = specimenCells(specimens[0], COLUMNS);
					expect([cells.get('title_en'), cells.get('text_fr')]).toEqual([en.title, fr.text]);
					const text = exportTable(specimens, COLUMNS, delimiter as ',' | ';');
					// UTF-8 as it is, or as a spreadsheet's "Unicode text"
					const table = tableFrom(wide ? Buffer.from(text, 'utf16le') : text);
					const planned = await planImport({ ...(await context), specimens }, table);
					expect(planned.ok && planned.value.rows).toEqual([
						{ line: 2, id: 'skm-0001', accession: 'SKM 0001', outcome: 'unchanged', changes: [], notes: [] },
					]);
				},
			),
			{ seed: 41, numRuns: 60 },
		);
	});

	it('brings every change into the files, and into them only what was changed', async () => {
		const keys = COLUMNS.filter(({ label: of }) => of).map(({ key }) => key);
		const change = fc.constantFrom(...keys).chain((key) => fc.tuple(fc.constant(key), value(key)));
		await fc.assert(
			fc.asyncProperty(change, fc.constantFrom(',', ';'), async ([key, wanted], delimiter) => {
				const { reader, specimens, languages } = await context;
				const one = specimens[0];
				const changed: SpecimenFiles = { ...one, labels: new Map(one.labels) };
				const language = key.slice(-2);
				const now = specimenCells(one, COLUMNS);
				const part = (name: string) => now.get(`${name}_${language}`)!;
				const fields = { title: part('title'), short: part('short'), alt: part('alt'), text: part('text') };
				changed.labels = new Map([
					...one.labels,
					[language, newLabel({ ...fields, [key.slice(0, -3)]: wanted })],
				]);
				const text = exportTable([changed], COLUMNS, delimiter as ',' | ';');
				const planned = await planImport({ reader, specimens, languages }, tableFrom(text));
				if (!planned.ok) throw new Error(planned.problem.code);
				const [row] = planned.value.rows;
				if (wanted === now.get(key)) return expect(row.outcome).toBe('unchanged');
				expect(row).toMatchObject({ outcome: 'changed', changes: [{ column: key, to: wanted }] });
				const labels = new Map(one.labels);
				for (const edit of planned.value.edits) labels.set(language, edit.after);
				expect(planned.value.edits.map(({ path }) => path)).toEqual([
					`specimens/skm-0001/label.${language}.md`,
				]);
				expect(specimenCells({ ...one, labels }, COLUMNS)).toEqual(specimenCells(changed, COLUMNS));
			}),
			{ seed: 42, numRuns: 60 },
		);
	});
});
