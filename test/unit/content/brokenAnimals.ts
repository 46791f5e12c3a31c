import type { BrokenCase } from './brokenContent';
import { edited } from './validContent';

const ALL = ['skm-0001', 'skm-0002'];
const G = 'groups/mosasaurus.yaml';
const EN = 'groups/mosasaurus.en.md';
const SVG = 'groups/mosasaurus.svg';
const svg = (inner: string, attributes = ' viewBox="0 0 100 20"') =>
	`<svg xmlns="http://www.w3.org/2000/svg"${attributes}>\n${inner}\n</svg>\n`;
const PATH = '<path d="M0 0L10 5Z"/>';
const withLength = (lines: string) => edited(G, 'habitat: sea\n', `habitat: sea\n${lines}\n`);
const ONLY_OUTLINES =
	'Turn everything into paths in your drawing program, without effects, and save it as "plain SVG".';

const forbidden = (name: string, text: string, at: string, what: string): BrokenCase => ({
	name: `a drawing with ${name}`,
	overlay: { [SVG]: text },
	shows: ALL,
	problems: [
		{
			at: `${SVG}:${at}`,
			id: 'drawing-forbidden',
			severity: 'error',
			path: '',
			message: `The drawing holds ${what}; only outlines (paths) are used here.`,
			remedy: ONLY_OUTLINES,
		},
	],
});

/** Lengths, outlines and short lines of the animal behind a tooth. */
export const brokenAnimals: BrokenCase[] = [
	{
		name: 'a negative length',
		overlay: withLength('length_m: { typical: -4, source: leidy-1865 }'),
		shows: [],
		problems: [
			{
				at: `${G}:4:22`,
				id: 'out-of-range',
				severity: 'error',
				path: 'length_m.typical',
				message: 'typical is -4; it can be from 0.05 to 60.',
				remedy: 'Check the number and its unit; the nearest possible is typical: 0.05',
			},
			...leftOut(),
		],
	},
	{
		name: 'a length from an unknown source',
		overlay: withLength('length_m: { typical: 4, source: leidy-1856 }'),
		shows: [],
		problems: [
			{
				at: `${G}:4:33`,
				id: 'unknown-source',
				severity: 'error',
				path: 'length_m.source',
				message: 'There is no source "leidy-1856" in sources.yaml. Did you mean leidy-1865?',
				remedy: 'Write leidy-1865',
			},
			...leftOut(),
		],
	},
	{
		name: 'a length without a number',
		overlay: withLength('length_m: { source: leidy-1865 }'),
		shows: [],
		problems: [
			{
				at: `${G}:4:1`,
				id: 'length-empty',
				severity: 'error',
				path: 'length_m',
				message: 'length_m gives neither a typical nor a largest length.',
				remedy: 'Write at least one of them: length_m: { typical: 4, largest: 6.1, source: leidy-1865 }',
			},
			...leftOut(),
		],
	},
	{
		name: 'a typical length beyond the largest',
		overlay: withLength('length_m: { typical: 6.1, largest: 4, source: leidy-1865 }'),
		shows: [],
		problems: [
			{
				at: `${G}:4:1`,
				id: 'lengths-swapped',
				severity: 'error',
				path: 'length_m',
				message: 'The typical length (6.1 m) is greater than the largest (4 m).',
				remedy: 'Swap them: typical: 4 and largest: 6.1',
			},
			...leftOut(),
		],
	},
	{
		name: 'a length without its unit in its name',
		overlay: withLength('length: { typical: 4, source: leidy-1865 }'),
		shows: [],
		problems: [
			{
				at: `${G}:4:1`,
				id: 'unit-missing',
				severity: 'error',
				path: 'length',
				message: '"length" does not say its unit: lengths of animals are in metres: length_m',
				remedy: 'Write length_m: { typical: 4, largest: 6.1, source: leidy-1865 }',
			},
			...leftOut(),
		],
	},
	{
		name: 'a line on the animal that is not short',
		overlay: edited(
			EN,
			'short: Giant sea lizard\n',
			'short: Giant sea lizard\nmoves: Swam with the whole of its long tail, which beat from side to side, all day and night\n',
		),
		shows: ALL,
		problems: [
			{
				at: `${EN}:4:8`,
				id: 'long-line',
				severity: 'warning',
				path: 'moves',
				message: 'moves has 18 words; 15 is the most for a line that is read at a glance.',
				remedy: 'Keep the one thing that matters most.',
			},
		],
	},
	{
		name: 'a drawing that is no SVG',
		overlay: { [SVG]: 'a big lizard' },
		shows: ALL,
		problems: [
			{
				at: `${SVG}:1:1`,
				id: 'drawing-not-svg',
				severity: 'error',
				path: '',
				message: 'The drawing is not an SVG file, or a part of it is not closed.',
				remedy: 'Save the outline again as "plain SVG" in your drawing program.',
			},
		],
	},
	{
		name: 'a drawing without a sheet size',
		overlay: { [SVG]: svg(PATH, '') },
		shows: ALL,
		problems: [
			{
				at: `${SVG}:1:1`,
				id: 'drawing-viewbox',
				severity: 'error',
				path: '',
				message:
					'The drawing does not say how large its sheet is: viewBox is missing, or is not four numbers.',
				remedy:
					'Write viewBox="0 0 1000 200": left, top, width, height. The width is the length of the animal, snout to tail tip.',
			},
		],
	},
	{
		name: 'a drawing without an outline',
		overlay: { [SVG]: svg('<g></g>') },
		shows: ALL,
		problems: [
			{
				at: `${SVG}:1:1`,
				id: 'drawing-no-path',
				severity: 'error',
				path: '',
				message: 'The drawing holds no outline.',
				remedy: 'Draw the outline as a path, or take the file out of groups/ and no outline is shown.',
			},
		],
	},
	{
		name: 'a drawing with bad path data',
		overlay: { [SVG]: svg(`${PATH}\n<path d="M0 0 L10 url(x)"/>`) },
		shows: ALL,
		problems: [
			{
				at: `${SVG}:3:7`,
				id: 'drawing-bad-path',
				severity: 'error',
				path: '',
				message: 'The data of path 2 cannot be read at "url(x)".',
				remedy:
					'Save the outline again as "plain SVG"; path data is letters and numbers, for example M0 0L10 5Z',
			},
		],
	},
	{
		name: 'a drawing with far too many points',
		overlay: { [SVG]: svg(`<path d="M0 0${'L1 1'.repeat(5000)}Z"/>`) },
		shows: ALL,
		problems: [
			{
				at: `${SVG}:1:1`,
				id: 'drawing-too-detailed',
				severity: 'error',
				path: '',
				message: 'The outline has 20005 signs of path data; 20000 is the most.',
				remedy: 'Simplify the path in your drawing program: 30 to 100 points are plenty for an outline.',
			},
		],
	},
	forbidden('a script', svg(`<script>if (1 < 2) alert(1)</script>${PATH}`), '2:1', 'a script'),
	forbidden('a script in an attribute', svg('<path onclick="alert(1)" d="M0 0L10 5Z"/>'), '2:7', 'a script'),
	forbidden('a style sheet', svg(`<style>path { fill: red }</style>${PATH}`), '2:1', 'a style'),
	forbidden('a style', svg('<path style="fill:red" d="M0 0L10 5Z"/>'), '2:7', 'a style'),
	forbidden('a link', svg(`${PATH}<a></a>`), '2:23', 'a link'),
	forbidden('a picture', svg(`${PATH}<image/>`), '2:23', 'a picture'),
	forbidden('lettering', svg(`${PATH}a lizard`), '2:23', 'lettering'),
	forbidden('a transform', svg(`<g transform="scale(2)">${PATH}</g>`), '2:4', 'a transform'),
	forbidden('an effect', svg(`<filter></filter>${PATH}`), '2:1', 'a part of the kind "filter"'),
	{
		name: 'a drawing saved under another ending',
		overlay: { 'groups/mosasaurus.SVG': svg(PATH) },
		shows: ALL,
		problems: [
			{
				at: 'groups/mosasaurus.SVG:1:1',
				id: 'wrong-ending',
				severity: 'error',
				path: '',
				message: 'The name ends in .SVG, so the file is not used.',
				remedy: 'Rename it to mosasaurus.svg',
			},
		],
	},
	{
		name: 'a drawing of a group that has no facts',
		overlay: { 'groups/globidens.svg': svg(PATH) },
		shows: ALL,
		problems: [
			{
				at: 'groups/globidens.yaml:1:1',
				id: 'missing-file',
				severity: 'error',
				path: '',
				message:
					'groups/globidens.yaml is missing. It holds the facts of the group globidens, so it is left out of the exhibit.',
				remedy: 'Make the file groups/globidens.yaml; copy it from the demo exhibit to begin with.',
			},
		],
	},
];

/** What is said of the two specimens of a group that is left out. */
function leftOut(): BrokenCase['problems'] {
	return ['skm-0001', 'skm-0002'].map((id) => ({
		at: `specimens/${id}/specimen.yaml:2:8`,
		id: 'group-left-out',
		severity: 'error',
		path: 'group',
		message:
			'The group "mosasaurus" has problems of its own and is left out, so this specimen is left out too.',
		remedy: 'Put right the problems listed for groups/mosasaurus.',
	}));
}
