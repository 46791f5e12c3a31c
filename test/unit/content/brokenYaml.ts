import { S1, S2, L1, type BrokenCase } from './brokenContent';
import { edited } from './validContent';

/** Files whose writing the reader cannot follow. */
export const brokenYaml: BrokenCase[] = [
	{
		name: 'a line set in wrongly',
		overlay: edited(S1, '    taper: bullet', '   taper: bullet'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:16:4`,
				id: 'bad-indent',
				severity: 'error',
				path: '',
				message:
					'This line, or the one above it, does not begin in the same column as the lines that it belongs with.',
				remedy: 'Give lines of one level the same number of spaces, and two more for each level below.',
			},
		],
	},
	{
		name: 'a tab in front of a line',
		overlay: edited(S1, '    taper: bullet', '\ttaper: bullet'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:16:1`,
				id: 'tab-indent',
				severity: 'error',
				path: '',
				message: 'This line begins with a tab. Lines are set in with spaces here.',
				remedy: 'Put two spaces for each tab.',
			},
		],
	},
	{
		name: 'a quote that is never closed',
		overlay: edited(L1, "short: A meat cutter's tooth", 'short: "A meat cutter'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${L1}:3:8`,
				id: 'unclosed-quote',
				severity: 'error',
				path: '',
				message: 'A quote opens here with " and is never closed.',
				remedy: 'Put " at the end of the text, for example title: "Sea lizard"',
			},
		],
	},
	{
		name: 'text after a closing quote',
		overlay: edited(L1, 'title: Crown with', 'title: "Crown" with'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${L1}:2:16`,
				id: 'text-after-quote',
				severity: 'error',
				path: '',
				message: 'There is something after the closing quote: "Crown" with a cutting edge',
				remedy:
					'Put the whole text in the other kind of quotes, for example title: \'"Sea" lizard\' or title: "The lizard\'s tooth"',
			},
		],
	},
	{
		name: 'a colon in a title',
		overlay: edited(L1, 'title: Crown with', 'title: Crown: one with'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${L1}:2:8`,
				id: 'colon-in-text',
				severity: 'error',
				path: '',
				message: 'This text holds a colon with a space after it, which would begin a new value.',
				remedy: 'Put the text in quotes: title: "Crown: one with a cutting edge"',
			},
		],
	},
	{
		name: 'a line without a colon',
		overlay: edited(L1, 'title: Crown', 'title Crown'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${L1}:2:1`,
				id: 'missing-colon',
				severity: 'error',
				path: '',
				message:
					'A colon is missing in "title Crown with a cutting edge": each line has a name, a colon, a space and a value.',
				remedy: 'Write it like this: title: Sea lizard',
			},
		],
	},
	{
		name: 'no space after a colon',
		overlay: edited(S1, 'part: shed-crown', 'part:shed-crown'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:3:1`,
				id: 'missing-space',
				severity: 'error',
				path: '',
				message: 'A space is missing after the colon in "part:shed-crown".',
				remedy: 'Write part: shed-crown',
			},
		],
	},
	{
		name: 'a text that begins with a star',
		overlay: edited(L1, 'title: Crown', 'title: *Crown*'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${L1}:2:8`,
				id: 'special-sign',
				severity: 'error',
				path: '',
				message: 'A text cannot begin with * here, because that sign has a meaning of its own.',
				remedy: 'Put the text in quotes, for example title: "*Crown* with a cutting edge"',
			},
		],
	},
	{
		name: 'a bracket that is never closed',
		overlay: edited(S1, 'width_factor: 0.9 }', 'width_factor: 0.9'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:15:9`,
				id: 'unclosed-bracket',
				severity: 'error',
				path: '',
				message: 'A bracket { opens here, and its } is missing or comes after a line that is not set in.',
				remedy: 'Close it on the same line: { at: 0, shape: oval }',
			},
		],
	},
	{
		name: 'a bracket too many',
		overlay: edited('exhibit.yaml', 'rooms: [compare]', 'rooms: [compare]]'),
		shows: null,
		problems: [
			{
				at: 'exhibit.yaml:5:17',
				id: 'extra-bracket',
				severity: 'error',
				path: '',
				message: 'There is a closing bracket too many, or one that nothing opened.',
				remedy: 'Count the brackets: each [ needs one ] and each { needs one }.',
			},
		],
	},
	{
		name: 'a comma that is missing',
		overlay: edited(S1, '- { at: 0, shape: oval }', '- { at: 0 shape: oval }'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:14:15`,
				id: 'missing-comma',
				severity: 'error',
				path: '',
				message: 'Between { and } a comma is missing.',
				remedy: 'Put a comma after each value: { at: 0, shape: oval }',
			},
		],
	},
	{
		name: 'no space after a colon between brackets',
		overlay: edited(S1, '- { at: 0, shape: oval }', '- { at:0, shape: oval }'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:14:11`,
				id: 'missing-space',
				severity: 'error',
				path: 'shape.model.sections[0].at:0',
				message: 'A space is missing after the colon in "at:0".',
				remedy: 'Write at: 0',
			},
		],
	},
	{
		name: 'no colon between brackets',
		overlay: edited(S1, '- { at: 0, shape: oval }', '- { at: 0, shape oval }'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:14:18`,
				id: 'missing-colon',
				severity: 'error',
				path: 'shape.model.sections[0].shape oval',
				message: 'A colon is missing in "shape oval": each line has a name, a colon, a space and a value.',
				remedy: 'Write it like this: shape: oval',
			},
		],
	},
	{
		name: 'a backslash between double quotes',
		overlay: edited(L1, 'title: Crown with a cutting edge', 'title: "C:\\dent"'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${L1}:2:11`,
				id: 'bad-backslash',
				severity: 'error',
				path: '',
				message: 'A \\ inside double quotes has a meaning of its own.',
				remedy: "Use single quotes for this text: 'one \\ sign', or write \\\\ for one \\",
			},
		],
	},
	{
		name: 'a second line of hyphens',
		overlay: edited(S1, 'part: shed-crown\n', '---\npart: shed-crown\n'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:3:1`,
				id: 'second-part',
				severity: 'error',
				path: '',
				message: 'A line of three hyphens begins a second part here; only the first is used.',
				remedy: 'Delete the line of hyphens.',
			},
		],
	},
	{
		name: 'a list on the line of its name',
		overlay: edited(S1, '\nsources: [leidy-1865]', '\nsources: - leidy-1865'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:29:10`,
				id: 'list-on-line',
				severity: 'error',
				path: '',
				message: 'A list cannot begin with a hyphen on the same line as its name.',
				remedy: 'Write the list in brackets, for example sources: [leidy-1865]',
			},
		],
	},
	{
		name: 'a line set in below a value',
		overlay: edited(S1, 'part: shed-crown\n', 'part: shed-crown\n  preserved: well\n'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:4:3`,
				id: 'bad-indent',
				severity: 'error',
				path: '',
				message:
					'This line, or the one above it, does not begin in the same column as the lines that it belongs with.',
				remedy: 'Give lines of one level the same number of spaces, and two more for each level below.',
			},
		],
	},
	{
		name: 'a question mark for a name',
		overlay: edited('groups/mosasaurus.yaml', 'habitat: sea', '? [a, b]\n: c\nhabitat: sea'),
		shows: [],
		problems: [
			{
				at: 'groups/mosasaurus.yaml:3:3',
				id: 'line-not-understood',
				severity: 'error',
				path: '',
				message: 'This line could not be understood: ? [a, b]',
				remedy:
					'Each line has a name, a colon, a space and a value. Put a text with special signs in quotes: title: "Sea lizard"',
			},
			{
				at: `${S1}:2:8`,
				id: 'group-left-out',
				severity: 'error',
				path: 'group',
				message:
					'The group "mosasaurus" has problems of its own and is left out, so this specimen is left out too.',
				remedy: 'Put right the problems listed for groups/mosasaurus.',
			},
			{
				at: `${S2}:2:8`,
				id: 'group-left-out',
				severity: 'error',
				path: 'group',
				message:
					'The group "mosasaurus" has problems of its own and is left out, so this specimen is left out too.',
				remedy: 'Put right the problems listed for groups/mosasaurus.',
			},
		],
	},
	{
		name: 'brackets nested too deep',
		overlay: edited('groups/mosasaurus.yaml', 'sources: [leidy-1865]', 'sources: ' + '['.repeat(50)),
		shows: [],
		problems: [
			{
				at: 'groups/mosasaurus.yaml:4:50',
				id: 'too-deep',
				severity: 'error',
				path: '',
				message: 'Values are nested too deep here.',
				remedy: 'Compare the file with the same kind of file of another specimen.',
			},
			{
				at: `${S1}:2:8`,
				id: 'group-left-out',
				severity: 'error',
				path: 'group',
				message:
					'The group "mosasaurus" has problems of its own and is left out, so this specimen is left out too.',
				remedy: 'Put right the problems listed for groups/mosasaurus.',
			},
			{
				at: `${S2}:2:8`,
				id: 'group-left-out',
				severity: 'error',
				path: 'group',
				message:
					'The group "mosasaurus" has problems of its own and is left out, so this specimen is left out too.',
				remedy: 'Put right the problems listed for groups/mosasaurus.',
			},
		],
	},
	{
		name: 'a name that stands twice',
		overlay: edited(S1, 'part: shed-crown\n', 'part: shed-crown\npart: crown\n'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:4:1`,
				id: 'duplicate-key',
				severity: 'error',
				path: 'part',
				message: '"part" stands here a second time; it is already on line 3.',
				remedy: 'Keep one of the two and delete the other.',
			},
		],
	},
	{
		name: 'a value that points elsewhere in the file',
		overlay: edited(S1, 'taper: bullet', 'taper: &t bullet'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:16:12`,
				id: 'reference-sign',
				severity: 'error',
				path: 'shape.model.taper',
				message:
					'A value begins with &, which would point to another place in the file; that is not used here.',
				remedy: 'If the & belongs to the text, put the text in quotes: title: "&Sea lizard"',
			},
		],
	},
	{
		name: 'a list entry set in less than the one above',
		overlay: edited(S1, '      - { at: 0.7', '     - { at: 0.7'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:15:6`,
				id: 'bad-indent',
				severity: 'error',
				path: '',
				message:
					'This line, or the one above it, does not begin in the same column as the lines that it belongs with.',
				remedy: 'Give lines of one level the same number of spaces, and two more for each level below.',
			},
		],
	},
	{
		name: 'a no-break space behind a colon',
		overlay: edited(S1, 'accession: SKM', 'accession:\u00A0SKM'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:1:11`,
				id: 'odd-space',
				severity: 'error',
				path: '',
				message:
					'This line holds a no-break space: it looks like a space, but is none to the program that reads the file.',
				remedy:
					'Delete the space there and type it again; text copied from a web page or a word processor brings such spaces.',
			},
		],
	},
	{
		name: 'no-break spaces in front of a line',
		overlay: edited(S1, '    crown_height_mm: 38.1', '  \u00A0\u00A0crown_height_mm: 38.1'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:10:3`,
				id: 'odd-space',
				severity: 'error',
				path: '',
				message:
					'This line holds a no-break space: it looks like a space, but is none to the program that reads the file.',
				remedy:
					'Delete the space there and type it again; text copied from a web page or a word processor brings such spaces.',
			},
		],
	},
];
