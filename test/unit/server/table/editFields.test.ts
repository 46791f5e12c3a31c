import { describe, expect, it } from 'vitest';
import { editFields } from '../../../../src/lib/server/table/editFields';
import { editLabel, newLabel, readLabel } from '../../../../src/lib/server/table/labelFile';
import { yamlScalar } from '../../../../src/lib/server/table/yamlScalar';

const FILE = `# a note
accession: SKM 1 # its number
group:   mosasaurus

identified:
  by: Skerrow Museum   # who
  certainty: likely
shape: { scan: { file: scan.stl, units: mm } }
declared: { crown_height_mm: 31, base_length_mm: 12 }
note: |
  Two
  lines.
sources: [a, b] # two
`;
const edit = (path: string, value: string | number | string[] | null, text = FILE) => {
	const edited = editFields(
		text,
		[{ path: path.split('.'), value }],
		['accession', 'group', 'bed', 'identified'],
	);
	return edited.ok ? edited.value : edited.problem.code;
};

describe('editFields', () => {
	it.each([
		['accession', 'SKM 2', 'accession: SKM 1 #', 'accession: SKM 2 #'],
		['accession', 'a: b, #c', 'accession: SKM 1 #', 'accession: "a: b, #c" #'],
		['accession', '0104', 'accession: SKM 1 #', 'accession: "0104" #'],
		['accession', 'no', 'accession: SKM 1 #', 'accession: no #'],
		['identified.by', 'Ada', 'by: Skerrow Museum   # who', 'by: Ada   # who'],
		['shape.scan.units', 'in', 'units: mm', 'units: in'],
		['declared.crown_height_mm', 30.5, 'crown_height_mm: 31', 'crown_height_mm: 30.5'],
		['declared.base_width_mm', 9, 'base_length_mm: 12 }', 'base_length_mm: 12, base_width_mm: 9 }'],
		['declared.crown_height_mm', null, 'crown_height_mm: 31, ', ''],
		['bed', 'upper-marl', 'group:   mosasaurus\n', 'group:   mosasaurus\nbed: upper-marl\n'],
		['sources', ['a', 'b', 'c'], '[a, b] # two', '[a, b, c] # two'],
		['sources', ['b'], '[a, b] # two', '[b] # two'],
		['sources', ['c', 'a'], '[a, b] # two', '[c, a] # two'],
		['note', 'One line', '|\n  Two\n  lines.\n', 'One line\n'],
	])('%s = %j', (path, value, piece, by) => {
		expect(FILE.split(piece).length).toBe(2);
		expect(edit(path, value)).toBe(FILE.replace(piece, () => by));
		const windows = FILE.replaceAll('\n', '\r\n');
		expect(edit(path, value, windows)).toBe(FILE.replace(piece, () => by).replaceAll('\n', '\r\n'));
	});

	it('makes the maps that are missing on the way, and the first line of a file of notes', () => {
		expect(edit('shape.model.taper', 'cone')).toBe(
			FILE.replace('units: mm } }', 'units: mm }, model: { taper: cone } }'),
		);
		expect(edit('show.from', '2026-12-01')).toBe(`${FILE}show: { from: 2026-12-01 }\n`);
		expect(edit('a', 'b', '# a note')).toBe('# a note\na: b\n');
	});

	it('changes and takes out entries of lists', () => {
		const text = 'edges:\n  - { id: a, at: 1 } # first\n  - id: b # second\n    at: 2\nlist: [x, y] # two\n';
		const made = (path: (string | number)[], value: string | number | null) => {
			const edited = editFields(text, [{ path, value }]);
			return edited.ok ? edited.value : edited.problem.code;
		};
		expect(made(['edges', 0, 'at'], 3)).toBe(text.replace('at: 1', 'at: 3'));
		expect(made(['edges', 1, 'at'], 3)).toBe(text.replace('at: 2', 'at: 3'));
		expect(made(['edges', 1, 'kind'], 'pit')).toBe(text.replace('at: 2', 'at: 2\n    kind: pit'));
		expect(made(['list', 1], 'z')).toBe(text.replace('y]', 'z]'));
		expect(made(['list', 0], null)).toBe(text.replace('x, ', ''));
		expect(made(['edges', 0], null)).toBe(text.replace('  - { id: a, at: 1 } # first\n', ''));
	});

	it('takes the last key of a map away with the map', () => {
		const emptied = editFields(FILE, [
			{ path: ['declared', 'crown_height_mm'], value: null },
			{ path: ['declared', 'base_length_mm'], value: null },
		]);
		expect(emptied).toEqual({
			ok: true,
			value: FILE.replace('declared: { crown_height_mm: 31, base_length_mm: 12 }\n', ''),
		});
	});

	it('leaves a file alone that it cannot change safely', () => {
		expect(edit('accession', 'x', 'accession: &a SKM\nnote: *a\n')).toBe('not-editable');
		expect(edit('accession', 'x', '- a\n')).toBe('not-editable');
		expect(edit('sources.2', 'cone')).toBe('not-editable');
		expect(edit('__proto__', 'cone')).toBe('not-editable');
		expect(edit('accession', 'x', 'a: 1\na: 2\n"')).toBe('not-editable');
	});

	it('writes texts that mean nothing else in YAML', () => {
		expect(['a, b', 'x', '', 'true', '12', "it's", '- a', '{'].map(yamlScalar)).toEqual([
			'"a, b"',
			'x',
			'""',
			'"true"',
			'"12"',
			"it's",
			'"- a"',
			'"{"',
		]);
	});
});

describe('label files', () => {
	const LABEL = '---\ntitle: One # note\nshort: "Two"\nfeatures:\n  edge: Edge\n---\n\nFirst.\n\nSecond.\n';

	it('are read', () => {
		expect(readLabel(LABEL)).toEqual({ title: 'One', short: 'Two', alt: '', text: 'First.\n\nSecond.' });
		expect(readLabel('no lines')).toBeNull();
	});

	it('are changed where they shall be and nowhere else', () => {
		expect(editLabel(LABEL, { title: 'Uno', alt: 'Three: 3' })).toEqual({
			ok: true,
			value: LABEL.replace('One', 'Uno').replace('"Two"\n', '"Two"\nalt: "Three: 3"\n'),
		});
		expect(editLabel(LABEL, { text: 'Third.' })).toEqual({
			ok: true,
			value: LABEL.replace('First.\n\nSecond.', 'Third.'),
		});
		expect(editLabel(LABEL.replaceAll('\n', '\r\n'), { text: 'A.\nB.' })).toEqual({
			ok: true,
			value: LABEL.replace('First.\n\nSecond.', 'A.\nB.').replaceAll('\n', '\r\n'),
		});
		expect(editLabel('---\ntitle: A\nshort: B\n---', { text: 'New.' })).toEqual({
			ok: true,
			value: '---\ntitle: A\nshort: B\n---\nNew.\n',
		});
		expect(editLabel(LABEL, { text: null, alt: null })).toEqual({
			ok: true,
			value: LABEL.slice(0, LABEL.indexOf('\n\nFirst') + 1),
		});
	});

	it('can be new', () => {
		const text = newLabel({ title: 'One: two', short: 'S', text: 'Body.' });
		expect(text).toBe('---\ntitle: "One: two"\nshort: S\n---\nBody.\n');
	});
});
