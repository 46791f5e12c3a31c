import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differenceInWords } from '../../../../src/lib/server/desk/differenceInWords';

const YAML = `accession: SKM 1 # a note
sources: [a, b]
features:
  - { id: edge, at: 0.5 }
  - { id: tip, at: 1 }
`;
const LABEL =
	'---\ntitle: A crown\nshort: Brown\n---\nIt was found on the shore.\n\nIt may be a shed tooth.\n';

describe('differenceInWords', () => {
	it('tells values by field, and entries of a list by their id', () => {
		const after = YAML.replace('SKM 1', 'SKM 2')
			.replace('[a, b]', '[a, c]')
			.replace('  - { id: edge, at: 0.5 }\n', '')
			.replace('at: 1 }', 'at: 0.9, kind: tip }');
		const { values, onlyForm } = differenceInWords('specimens/a/specimen.yaml', YAML, after);
		expect(values).toEqual([
			{ kind: 'changed', path: 'accession', from: 'SKM 1', to: 'SKM 2' },
			{ kind: 'changed', path: 'sources', from: 'a, b', to: 'a, c' },
			{ kind: 'changed', path: 'features[tip].at', from: '1', to: '0.9' },
			{ kind: 'added', path: 'features[tip].kind', to: 'tip' },
			{ kind: 'removed', path: 'features[edge].id', from: 'edge' },
			{ kind: 'removed', path: 'features[edge].at', from: '0.5' },
		]);
		expect(onlyForm).toBe(false);
	});

	it('tells a label word by word, paragraph by paragraph', () => {
		const after = LABEL.replace('Brown', 'Dark brown').replace('found on the shore', 'found below the mill');
		const told = differenceInWords('specimens/a/label.en.md', LABEL, `${after}\nA third.\n`);
		expect(told.values).toEqual([{ kind: 'changed', path: 'short', from: 'Brown', to: 'Dark brown' }]);
		expect(told.paragraphs).toEqual([
			{
				kind: 'changed',
				number: 1,
				parts: [
					{ kind: 'same', text: 'It was found ' },
					{ kind: 'removed', text: 'on' },
					{ kind: 'added', text: 'below' },
					{ kind: 'same', text: ' the ' },
					{ kind: 'removed', text: 'shore' },
					{ kind: 'added', text: 'mill' },
					{ kind: 'same', text: '.' },
				],
			},
			{ kind: 'added', number: 3, parts: [{ kind: 'added', text: 'A third.' }] },
		]);
	});

	it('says where only notes or line ends differ, and where a text cannot be read', () => {
		const note = differenceInWords('beds/a.yaml', 'oldest_ma: 1 # x\n', 'oldest_ma: 1 # y\n');
		expect(note).toMatchObject({ values: [], onlyForm: true });
		const ends = differenceInWords('beds/a.yaml', 'oldest_ma: 1\n', 'oldest_ma: 1\r\n');
		expect(ends).toMatchObject({ values: [], onlyForm: true });
		expect(differenceInWords('beds/a.yaml', 'a: 1\n', 'a: [\n').values).toBeNull();
	});

	it('tells a new file and one that was taken away', () => {
		const made = differenceInWords('beds/a.yaml', null, 'oldest_ma: 1\n');
		expect(made.values).toEqual([{ kind: 'added', path: 'oldest_ma', to: '1' }]);
		expect(made.lines).toEqual([{ kind: 'added', text: 'oldest_ma: 1', oldLine: null, newLine: 1 }]);
		const gone = differenceInWords('beds/a.yaml', 'oldest_ma: 1\n', null);
		expect(gone.lines).toEqual([{ kind: 'removed', text: 'oldest_ma: 1', oldLine: 1, newLine: null }]);
	});

	it('holds every line of both texts, in order and numbered', () => {
		const text = fc
			.array(fc.constantFrom('a: 1', '# x', '', 'b: 2', '  c: 3'), { maxLength: 12 })
			.map((lines) => lines.map((line) => `${line}\n`).join(''));
		fc.assert(
			fc.property(text, text, (before, after) => {
				const { lines } = differenceInWords('beds/a.yaml', before, after);
				const of = (skip: string) => lines.filter(({ kind }) => kind !== skip).map((one) => `${one.text}\n`);
				expect(of('added').join('')).toBe(before);
				expect(of('removed').join('')).toBe(after);
				const numbers = lines.flatMap(({ newLine }) => newLine ?? []);
				expect(numbers).toEqual(numbers.map((_, i) => i + 1));
			}),
			{ numRuns: 100, seed: 7 },
		);
	});
});
