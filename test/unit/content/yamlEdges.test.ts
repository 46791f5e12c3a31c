import { describe, expect, it } from 'vitest';
import { loadContent } from '../../../src/lib/content/loadContent';
import { L1, S1 } from './brokenContent';
import { memoryReader } from './memoryReader';
import { contentWith, edited, VALID_CONTENT, type Overlay } from './validContent';

const load = (overlay: Overlay) => loadContent(memoryReader(contentWith(overlay)));
const text = VALID_CONTENT[S1];
/** What a program that reads UTF-8 sees of text in another encoding. */
const asUtf8 = (bytes: Uint8Array) => new TextDecoder('utf-8').decode(bytes);
const titled = (title: string) => edited(L1, 'title: Crown with a cutting edge', `title: ${title}`);
const height = (value: string) => edited(S1, 'crown_height_mm: 38.1', `crown_height_mm: ${value}`);

/**
 * Values that YAML 1.1 and YAML 1.2 read differently (YAML 1.2.2, sections 10.2 and 10.3), and files that are no
 * YAML. [name, overlay, problems as `id line:column`]
 */
const EDGES: [string, Overlay, string[]][] = [
	['no as a language code is Norwegian, not false', noNorwegian(), []],
	['on as an id is a text', edited(S1, 'group: mosasaurus', 'group: on'), ['unknown-group 2:8']],
	['yes as a title is a text', titled('yes'), []],
	['true as a title is no text', titled('true'), ['text-needs-quotes 2:8']],
	['~ as a title is nothing', titled('~'), ['empty-value 2:8']],
	['a day as a title is a text', titled('2026-11-25'), []],
	['1:30 is not ninety', height('1:30'), ['not-a-number 10:22']],
	['1_000 is no number', height('1_000'), ['not-a-number 10:22']],
	['0104 keeps its zero', edited(S1, 'accession: SKM 0001', 'accession: 0104'), ['text-needs-quotes 1:12']],
	[
		'<< is a name like any other',
		edited(S1, 'part: shed-crown', 'part: shed-crown\n<<: { bed: x }'),
		['unknown-key 4:1'],
	],
	[
		'a tag is refused',
		edited(S1, 'accession: SKM 0001', 'accession: !!python/object x'),
		['special-sign 1:12'],
	],
	['curly quotes are part of the text', titled('“Crown” edge'), []],
	['curly quotes close nothing', titled('“Crown”: an edge'), ['colon-in-text 2:8']],
	['only comments', { [S1]: '# a\n# b\n' }, ['empty-file 1:1']],
	['an empty file', { [S1]: '' }, ['empty-file 1:1']],
	['a NUL', { [S1]: `${text}\0` }, ['not-text 30:1']],
	['UTF-16', { [S1]: asUtf8(Buffer.from(`\uFEFF${text}`, 'utf16le')) }, ['not-text 1:4']],
	['Latin-1', { [L1]: asUtf8(Buffer.from('---\ntitle: Crâne\n', 'latin1')) }, ['not-utf8 2:10']],
	['a byte order mark and CR LF', { [S1]: `\uFEFF${text.replace(/\n/g, '\r\n')}` }, []],
	['CR alone', { [S1]: text.replace(/\n/g, '\r') }, []],
	[
		'a key that stands twice',
		edited(S1, 'part: shed-crown', 'part: shed-crown\npart: crown'),
		['duplicate-key 4:1'],
	],
	[
		'a line without a name',
		edited(S1, 'part: shed-crown', 'part: shed-crown\n: x'),
		['line-not-understood 4:1'],
	],
	['brackets 5000 deep', { [S1]: `a: ${'['.repeat(5000)}${']'.repeat(5000)}` }, ['too-deep 1:44']],
	[
		'lines 300 deep',
		{ [S1]: Array.from({ length: 300 }, (_, i) => `${' '.repeat(i)}a:`).join('\n') },
		['too-deep 201:1'],
	],
	['10 MB', { [S1]: 'a: b\n'.repeat(2_000_000) }, ['file-too-large 1:1']],
];

/** French becomes Norwegian, with all its files. */
function noNorwegian(): Overlay {
	const overlay: Record<string, string | null> = {
		...edited('exhibit.yaml', 'code: fr, name: Français', 'code: no, name: Norsk'),
	};
	for (const [path, words] of Object.entries(VALID_CONTENT)) {
		if (!/[./]fr\.(md|yaml)$/.test(path)) continue;
		overlay[path] = null;
		overlay[path.replace(/fr(?=\.\w+$)/, 'no')] = words;
	}
	return overlay;
}

describe('edges of YAML', () => {
	it.each(EDGES)('%s', async (_name, overlay, expected) => {
		const { problems } = await load(overlay);
		expect(problems.map(({ id, line, column }) => `${id} ${line}:${column}`)).toEqual(expected);
	});

	it('opens no bomb: every sign that points elsewhere is refused where it stands', async () => {
		const bomb = ['a: &a [x, x, x, x]', 'b: &b [*a, *a, *a, *a]', 'c: [*b, *b, *b, *b]'].join('\n');
		const { draft, problems } = await load({ [S1]: bomb });
		expect(new Set(problems.map(({ id }) => id))).toEqual(new Set(['reference-sign']));
		expect(problems[0]).toMatchObject({ line: 1, column: 4 });
		expect(draft!.specimens.map(({ id }) => id)).toEqual(['skm-0002']);
	});
});
