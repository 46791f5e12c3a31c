import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MarkedFeature } from '../../../src/lib/content/exhibit';
import { editSpecimen, type SpecimenChanges } from '../../../src/lib/server/editSpecimen';

/** A file as a curator writes it: notes everywhere, lines in an order of their own, a blank line too many. */
const FILE = `# Tooth from the third drawer.
accession: SKM 0186   # painted on the root
group: mosasaurus
part: rooted-tooth
preservation: tan


identified: { by: "Skerrow Museum",   certainty: sure }
shape:
  scan:               # made in May
    file: scan.stl    # the second try
    units: mm
  # the first try was in inches
features:
  # from the tip down
  - { id: edge,   at: 0.60, where: distal }   # sharp
  - id: root
    at: -0.5
    where: 100        # nearly labial
  - { id: pit, at: -0.2, where: lingual, kind: pit }

# who may use it
licence: http://creativecommons.org/licenses/by/4.0/
rights_holder: 'Skerrow Museum'
sources: [ours]
# the end`;

const MODEL = FILE.replace(
	/ {2}scan:[^]*?mm\n/,
	`  model:
    { crown_height_mm: 20, base_length_mm: 10, base_width_mm: 8, sections: [{ at: 0, shape: round }], taper: cone,
      curve: { distal_deg: 0, lingual_deg: 0, starts_at: 0 }, tip_radius_mm: 0.5, root: { state: none } }
`,
);

const marks = {
	apex: [2.10004, 4.8, 60.3],
	baseMesial: [-9.5, -0.0001, 18],
	baseDistal: [9.1, 0.4, 18.2],
} as const;

const kept: MarkedFeature[] = [
	{ id: 'edge', at: 0.6, where_deg: 0, kind: 'other' },
	{ id: 'root', at: -0.5, where_deg: 100, kind: 'other' },
	{ id: 'pit', at: -0.2, where_deg: 270, kind: 'pit' },
];

function edit(text: string, changes: SpecimenChanges): string {
	const result = editSpecimen(text, changes);
	if (!result.ok) throw new Error(JSON.stringify(result.problem));
	return result.value;
}

/** Lines that are not the same in both, each with its sign. */
function difference(before: string, after: string): string[] {
	const [old, now] = [before.split('\n'), after.split('\n')];
	const gone = old.filter((line) => !now.includes(line)).map((line) => `- ${line}`);
	return [...gone, ...now.filter((line) => !old.includes(line)).map((line) => `+ ${line}`)];
}

describe('editSpecimen', () => {
	it('changes no byte where nothing changes', () => {
		expect(edit(FILE, {})).toBe(FILE);
		expect(edit(FILE, { features: kept })).toBe(FILE);
		expect(edit(FILE, { crown: null })).toBe(FILE);
	});

	it('puts the marks of the crown under the scan, each on a line of its own', () => {
		const made = edit(FILE, { crown: marks });
		expect(made).toBe(
			FILE.replace(
				'    units: mm\n',
				`    units: mm
    crown:
      apex_mm: [2.1, 4.8, 60.3]
      base_mesial_mm: [-9.5, 0, 18]
      base_distal_mm: [9.1, 0.4, 18.2]
`,
			),
		);
	});

	it('moves a mark where it stands, adds the labial direction and takes it away again', () => {
		const first = edit(FILE, { crown: marks });
		const moved = edit(first, { crown: { ...marks, apex: [2, 4.8, 60.3] } });
		expect(difference(first, moved)).toEqual([
			'-       apex_mm: [2.1, 4.8, 60.3]',
			'+       apex_mm: [2, 4.8, 60.3]',
		]);
		const turned = edit(first, { crown: { ...marks, labial: [0, 0.123456, 1] } });
		expect(difference(first, turned)).toEqual(['+       labial: [0, 0.1235, 1]']);
		expect(edit(turned, { crown: marks })).toBe(first);
		expect(edit(first, { crown: null })).toBe(FILE);
	});

	it('keeps to braces where the file has them, in whatever order', () => {
		const block =
			'  scan:               # made in May\n    file: scan.stl    # the second try\n    units: mm\n';
		const flow = FILE.replace(block, '  scan: { units: mm, file: scan.stl } # made in May\n');
		const made = edit(flow, { crown: marks });
		expect(difference(flow, made)).toEqual([
			'-   scan: { units: mm, file: scan.stl } # made in May',
			'+   scan: { units: mm, file: scan.stl, crown: { apex_mm: [2.1, 4.8, 60.3], base_mesial_mm: [-9.5, 0, 18], base_distal_mm: [9.1, 0.4, 18.2] } } # made in May',
		]);
		expect(edit(made, { crown: null })).toBe(flow);
		const turned = edit(made, { crown: { ...marks, labial: [0, 1, 0] } });
		expect(turned).toContain('base_distal_mm: [9.1, 0.4, 18.2], labial: [0, 1, 0] } } # made in May');
		expect(edit(turned, { crown: marks })).toBe(made);
	});

	it('moves, names the kind of, adds and removes features, with the notes beside the others', () => {
		const made = edit(FILE, {
			features: [
				{ id: 'edge', at: 0.45, where_deg: 180, kind: 'carina' },
				{ id: 'root', at: -0.5, where_deg: 90, kind: 'root' },
				{ id: 'tip', at: 0.98, where_deg: 12.34, kind: 'other' },
			],
		});
		expect(difference(FILE, made)).toEqual([
			'-   - { id: edge,   at: 0.60, where: distal }   # sharp',
			'-     where: 100        # nearly labial',
			'-   - { id: pit, at: -0.2, where: lingual, kind: pit }',
			'+   - { id: edge,   at: 0.45, where: mesial, kind: carina }   # sharp',
			'+     where: labial        # nearly labial',
			'+     kind: root',
			'+   - { id: tip, at: 0.98, where: 12.3 }',
		]);
		expect(made).toContain('    kind: root\n  - { id: tip, at: 0.98, where: 12.3 }\n\n# who may use it');
	});

	it('writes a list that was empty, missing, or in brackets, and empties one', () => {
		const items = /features:\n {2}#[^]*?kind: pit }\n/;
		const block = `features:\n  - { id: tip, at: 1, where: mesial, kind: tip }\n`;
		const tip: MarkedFeature = { id: 'tip', at: 1, where_deg: 180, kind: 'tip' };
		const emptied = edit(FILE, { features: [] });
		expect(emptied).toBe(FILE.replace(items, 'features: []\n'));
		expect(edit(emptied, { features: [tip] })).toBe(FILE.replace(items, block));
		const missing = FILE.replace(items, '');
		expect(edit(missing, { features: [tip] })).toBe(
			FILE.replace(items, '').replace('    units: mm\n', `    units: mm\n\n${block}`),
		);
		expect(edit(missing, { features: [] })).toBe(missing);
		const flow = FILE.replace(
			items,
			'features: [{ id: a, at: 0, where: 1 }, { id: b, at: 0, where: 2 }, { id: c, at: 0, where: 3 }] # all\n',
		);
		expect(edit(flow, { features: [{ id: 'c', at: 0, where_deg: 3, kind: 'other' }, tip] })).toContain(
			'features: [{ id: c, at: 0, where: 3 }, { id: tip, at: 1, where: mesial, kind: tip }] # all\n',
		);
		expect(edit(flow, { features: [{ id: 'a', at: 0, where_deg: 1, kind: 'other' }, tip] })).toContain(
			'features: [{ id: a, at: 0, where: 1 }, { id: tip, at: 1, where: mesial, kind: tip }] # all\n',
		);
	});

	it('keeps Windows line ends and a byte order mark, and a file without a last line end', () => {
		const windows = `\uFEFF${FILE.replace(/\n/g, '\r\n')}`;
		const features = [...kept, { id: 'tip', at: 1, where_deg: 0, kind: 'tip' as const }];
		const made = edit(windows, { crown: marks, features });
		expect(made).toBe(`\uFEFF${edit(FILE, { crown: marks, features }).replace(/\n/g, '\r\n')}`);
		expect(made.endsWith('# the end')).toBe(true);
	});

	it('refuses a file with mistakes, a model, and marks that cannot be', () => {
		const code = (text: string, changes: SpecimenChanges) => {
			const result = editSpecimen(text, changes);
			return result.ok ? 'ok' : result.problem.code;
		};
		expect(code(FILE.replace('part:', 'prat:'), { crown: marks })).toBe('specimen-has-errors');
		expect(code('a: [', { crown: marks })).toBe('specimen-has-errors');
		expect(code(FILE, { crown: { ...marks, apex: marks.baseDistal } })).toBe('marks-not-possible');
		expect(code(FILE, { features: [...kept, kept[0]] })).toBe('not-editable');
		expect(code(MODEL, { crown: marks })).toBe('not-a-scan');
		expect(code(MODEL, { features: [] })).toBe('ok');
		const result = editSpecimen(FILE, { crown: { ...marks, apex: marks.baseMesial } });
		expect(result.ok ? null : result.problem.message).toBe(
			'The apex and the mesial base of the crown are marked at the same place.',
		);
	});

	it('says what was asked for, whatever was asked for', () => {
		const mark = fc.tuple(
			...([0, 1, 2].map(() => fc.double({ min: -99, max: 99, noNaN: true })) as [
				fc.Arbitrary<number>,
				fc.Arbitrary<number>,
				fc.Arbitrary<number>,
			]),
		);
		const feature = fc.record({
			id: fc.constantFrom('edge', 'root', 'pit', 'tip', 'facet-2'),
			at: fc.double({ min: -5, max: 1, noNaN: true }),
			where_deg: fc.double({ min: 0, max: 360, noNaN: true }),
			kind: fc.constantFrom('carina' as const, 'other' as const, 'pit' as const),
		});
		fc.assert(
			fc.property(
				mark,
				fc.uniqueArray(feature, { selector: ({ id }) => id }),
				fc.boolean(),
				(apex, features, labial) => {
					// far enough from the base points that the marks can be told apart
					const crown = {
						...marks,
						apex: [apex[0], apex[1], apex[2] + 200] as const,
						...(labial ? { labial: [0, 1, 0.5] as const } : {}),
					};
					const once = edit(FILE, { crown, features });
					// asked for again, nothing changes any more; taken back, the first file is there
					expect(edit(once, { crown, features })).toBe(once);
					const back = edit(once, { crown: null });
					expect(back).toBe(edit(FILE, { features }));
				},
			),
			{ numRuns: 150 },
		);
	});
});
