import type { BrokenCase } from './brokenContent';

const ALL = ['skm-0001', 'skm-0002'];
const WORDS = (table: string, id: string) => ({
	'replacement/en.yaml': `${table}:\n  ${id}: { name: A name, line: One line }\n`,
	'replacement/fr.yaml': `${table}:\n  ${id}: { name: Un nom, line: Une ligne }\n`,
});
const table = (name: string, id: string, lines: string) => ({
	[`replacement/${name}.yaml`]: `${id}:\n${lines
		.split('\n')
		.map((line) => `  ${line}\n`)
		.join('')}`,
	...WORDS(name, id),
});
const JAW = 'positions: 5\nperiod_d: 100';
const SLICE =
	'line_um: { from: 10, source: leidy-1865 }\nseed: 1\nedge_loss: { from: 0.3, source: leidy-1865 }';
const MYSTERY = `model:
  crown_height_mm: 30
  base_length_mm: 15
  base_width_mm: 14
  sections: [{ at: 0, shape: round }]
  taper: bullet
  curve: { distal_deg: 0, lingual_deg: 0, starts_at: 0.2 }
  tip_radius_mm: 1
  root: { state: none }
preservation: tan
root: none
base: clean-break
tip: worn`;

/** Tables of tooth replacement; the specimens are shown whatever is wrong with these. */
export const brokenReplacement: BrokenCase[] = [
	{
		name: 'a range that runs backwards',
		overlay: table(
			'animals',
			'gator',
			'kind: crocodilian\nliving: true\nperiod_d: { from: 120, to: 109, source: leidy-1865 }',
		),
		shows: ALL,
		problems: [
			{
				at: 'replacement/animals.yaml:4:3',
				id: 'range-swapped',
				severity: 'error',
				path: 'gator.period_d',
				message: 'period_d goes from 120 down to 109.',
				remedy: 'Swap them: from: 109, to: 120',
			},
		],
	},
	{
		name: 'a number of an animal without its source',
		overlay: table('animals', 'gator', 'kind: crocodilian\nliving: true\nperiod_d: { from: 120 }'),
		shows: ALL,
		problems: [
			{
				at: 'replacement/animals.yaml:4:3',
				id: 'missing-key',
				severity: 'error',
				path: 'gator.period_d.source',
				message: 'source is missing.',
				remedy: 'Add a line such as source: leidy-1865',
			},
		],
	},
	{
		name: 'a stage that the scheme does not have',
		overlay: table('stages', 'tooth-fairy', 'sources: [leidy-1865]'),
		shows: ALL,
		problems: [
			{
				at: 'replacement/stages.yaml:1:1',
				id: 'fixed-name',
				severity: 'error',
				path: 'tooth-fairy',
				message:
					'"tooth-fairy" is not one of the names that this file may use: germ, crown, pit, loose, erupting, in-use.',
				remedy: 'Use one of those names, each once.',
			},
		],
	},
	{
		name: 'a jaw without a spacing',
		overlay: table('jaws', 'zebra', JAW),
		shows: ALL,
		problems: [
			{
				at: 'replacement/jaws.yaml:1:1',
				id: 'spacing-missing',
				severity: 'error',
				path: 'zebra',
				message: 'A jaw needs spacing (one number) or spacings (a list), one of the two.',
				remedy: 'Write spacing: 2.5',
			},
		],
	},
	{
		name: 'a jaw with a wrong number of spacings',
		overlay: table('jaws', 'zebra', `${JAW}\nspacings: [1, 2, 2]`),
		shows: ALL,
		problems: [
			{
				at: 'replacement/jaws.yaml:4:3',
				id: 'spacings-count',
				severity: 'error',
				path: 'zebra.spacings',
				message: 'spacings has 3 numbers; a jaw needs one for each step between two positions, here 4.',
				remedy: 'Write 4 numbers, or spacing: 2 for the whole jaw.',
			},
		],
	},
	{
		name: 'a successor older than the tooth in use',
		overlay: table(
			'slices',
			'old',
			`in_use: { from: 233, source: leidy-1865 }\nsuccessor: { from: 511, source: leidy-1865 }\n${SLICE}`,
		),
		shows: ALL,
		problems: [
			{
				at: 'replacement/slices.yaml:3:3',
				id: 'successor-older',
				severity: 'error',
				path: 'old.successor',
				message: 'The successor (511 lines) is not younger than the tooth in use (233 lines).',
				remedy: 'Check which of the two is which: the tooth in use is the older one.',
			},
		],
	},
	{
		name: 'a mystery whose signs lead elsewhere',
		overlay: table('mysteries', 'base', `${MYSTERY}\nanswer: shed`),
		shows: ALL,
		problems: [
			{
				at: 'replacement/mysteries.yaml:15:3',
				id: 'answer-disagrees',
				severity: 'error',
				path: 'base.answer',
				message: 'The answer is "shed", but its signs (root, base, tip) lead to "broken-crown".',
				remedy: 'Change the signs, or write answer: broken-crown',
			},
		],
	},
	{
		name: 'a mystery whose tooth cannot be made',
		overlay: table(
			'mysteries',
			'base',
			`${MYSTERY.replace('tip_radius_mm: 1', 'tip_radius_mm: 90')}\nanswer: broken-crown`,
		),
		shows: ALL,
		problems: [
			{
				at: 'replacement/mysteries.yaml:9:20',
				id: 'out-of-range',
				severity: 'error',
				path: 'base.model.tip_radius_mm',
				message: 'tip_radius_mm is 90; it can be from 0.005 to 60.',
				remedy: 'Check the number and its unit; the nearest possible is tip_radius_mm: 60',
			},
		],
	},
	{
		name: 'an entry without words',
		overlay: {
			...table('animals', 'gator', 'kind: crocodilian\nliving: true'),
			'replacement/en.yaml': 'animals:\n  gater: { name: Alligator, line: It swims }\n',
		},
		shows: ALL,
		problems: [
			{
				at: 'replacement/animals.yaml:1:1',
				id: 'words-missing',
				severity: 'error',
				path: 'gator',
				message: 'There are no usable words for "gator" in replacement/en.yaml, so it is left out.',
				remedy: 'Add them to replacement/en.yaml under animals: gator: { name: A name, line: One line }',
			},
			{
				at: 'replacement/en.yaml:2:3',
				id: 'text-not-used',
				severity: 'warning',
				path: 'animals.gater',
				message:
					'"gater" does not stand in replacement/animals.yaml, so it is not shown. Did you mean gator?',
				remedy: 'Write gator in place of gater.',
			},
		],
	},
];
