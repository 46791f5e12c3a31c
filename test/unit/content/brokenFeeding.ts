import type { BrokenCase, ExpectedProblem } from './brokenContent';
import { VALID_CONTENT, type Overlay } from './validContent';
import { feedingWith, feedingWithout } from './validFeeding';

const ALL = ['skm-0001', 'skm-0002'];
const T = 'feeding/thresholds.yaml';
const M = 'feeding/materials.yaml';
const G = 'feeding/guilds.yaml';
const P = 'feeding/prey/turtle.yaml';
const J = 'feeding/jaws/lizard.yaml';
const EN = 'feeding/words/en.yaml';
const FR = 'feeding/words/fr.yaml';

const broken = (name: string, overlay: Overlay, ...problems: ExpectedProblem[]): BrokenCase => ({
	name,
	overlay,
	shows: ALL,
	problems,
});
const error = (at: string, id: string, path: string, message: string, remedy: string): ExpectedProblem => ({
	at,
	id,
	severity: 'error',
	path,
	message,
	remedy,
});
const warning = (...about: Parameters<typeof error>): ExpectedProblem => ({
	...error(...about),
	severity: 'warning',
});

/** Mistakes in the folder `feeding/`. */
export const brokenFeeding: BrokenCase[] = [
	broken(
		'a number that is only recalled and does not say so',
		{
			...feedingWith(M, 'high: 30, source: leidy-1865', 'high: 30, source: recalled'),
			'sources.yaml': `${VALID_CONTENT['sources.yaml']}recalled:\n  citation: What we remember\n  tag: memory\n`,
		},
		warning(
			`${M}:2:56`,
			'number-not-marked',
			'skin.resists_mpa.source',
			'This number rests on "recalled", which is only recalled; the screen marks it.',
			'Write tag: memory beside it, or look the number up and give its source.',
		),
	),
	broken(
		'a number without a source',
		feedingWith(M, '{ value: 20, low: 10, high: 30, source: leidy-1865 }', '{ value: 20 }'),
		error(
			`${M}:2:3`,
			'missing-key',
			'skin.resists_mpa.source',
			'source is missing.',
			'Add a line such as source: leidy-1865',
		),
		error(
			`${P}:3:17`,
			'unknown-material',
			'layers[0].material',
			'There is no usable material "skin" in feeding/materials.yaml, so this prey is left out.',
			'Add it to materials.yaml, or write an id that stands there.',
		),
	),
	broken(
		'a range the wrong way round',
		feedingWith(
			'feeding/crown.yaml',
			'value: 0.84, low: 0.7, high: 1.37',
			'value: 0.84, low: 1.37, high: 0.7',
		),
		error(
			'feeding/crown.yaml:4:1',
			'low-high-swapped',
			'enamel_toughness',
			'low, value and high do not rise: 1.37, 0.84, 0.7.',
			'Write the smallest under low, the largest under high, and the value between them.',
		),
	),
	broken(
		'a band with nothing in it',
		feedingWith(G, 'slenderness: { from: 0.1, to: 1.2 }', 'slenderness: { from: 1.2, to: 0.1 }'),
		error(
			`${G}:3:12`,
			'band-swapped',
			'crush.bands.slenderness',
			'The band goes from 1.2 to 0.1, so nothing lies in it.',
			'Swap them: { from: 0.1, to: 1.2 }',
		),
	),
	broken(
		'a guild that nobody has published',
		feedingWith(G, 'crush:\n  corner', 'crash:\n  corner'),
		error(
			`${G}:1:1`,
			'unknown-guild',
			'crash',
			'There is no guild "crash". The published ones are pierce-one, pierce-two, smash, crunch, crush, general, cut.',
			'Write crush: in place of crash:',
		),
		warning(
			`${EN}:6:3`,
			'text-not-used',
			'guilds.crush',
			'"crush" does not stand in feeding/guilds.yaml, so it is not shown.',
			'Delete the line, or add it to feeding/guilds.yaml first.',
		),
		warning(
			`${FR}:6:3`,
			'text-not-used',
			'guilds.crush',
			'"crush" does not stand in feeding/guilds.yaml, so it is not shown.',
			'Delete the line, or add it to feeding/guilds.yaml first.',
		),
	),
	broken(
		'a layer of a material that does not exist',
		feedingWith(P, '{ material: bone,', '{ material: bones,'),
		error(
			`${P}:4:17`,
			'unknown-material',
			'layers[1].material',
			'There is no usable material "bones" in feeding/materials.yaml, so this prey is left out.',
			'Write material: bone',
		),
	),
	broken(
		'a stiffness without its other half',
		{
			...feedingWith(M, '  poisson: { value: 0.3, source: leidy-1865 }\n', ''),
			[P]: feedingWith(P, '  - { material: bone, thickness_mm: { value: 4, source: skerrow-model } }\n', '')[
				P
			],
		},
		error(
			`${M}:7:1`,
			'elastic-half',
			'bone',
			'stiffness_gpa and poisson belong together; one of them is missing.',
			'Give both, or delete the one that is there.',
		),
	),
	broken(
		'stops of a jaw that do not begin in front',
		feedingWith(J, 'id: front, at: 0,', 'id: front, at: 0.2,'),
		error(
			`${J}:2:1`,
			'jaw-stops',
			'stops',
			'The stops of a jaw rise from at: 0 (front) to at: 1 (back); these do not.',
			'Write two stops at least, in order: the first at: 0, the last at: 1.',
		),
	),
	broken(
		'no file of thresholds',
		feedingWithout(T),
		error(
			`${T}:1:1`,
			'feeding-part-missing',
			'',
			'feeding/thresholds.yaml is missing or cannot be used, so the feeding room is not shown.',
			'Make the file, or copy feeding/thresholds.yaml from the demo exhibit.',
		),
	),
	broken(
		'prey without words',
		feedingWith(EN, '  turtle: { name: Turtle, short: Bone all round, lesson: Try a dome. }\n', '  {}\n'),
		error(
			`${EN}:1:1`,
			'feeding-words-missing',
			'prey.turtle',
			'"prey.turtle" has no usable words in the first language (English), so it is left out.',
			'Add them to feeding/words/en.yaml; copy those of another one to begin with.',
		),
	),
	broken(
		'a comparison that does not count',
		feedingWith(EN, '"{count, plural, one {# apple} other {# apples}}"', 'many apples'),
		error(
			`${EN}:20:10`,
			'everyday-count',
			'everyday.apple',
			'This text must hold {count} and no other filler: many apples',
			'Write it like this: "{count, plural, one {# apple} other {# apples}}"',
		),
	),
	broken(
		'prey that is not translated',
		feedingWith(
			FR,
			'  turtle: { name: Tortue, short: De l’os tout autour, lesson: Essayez un dôme. }\n',
			'  {}\n',
		),
		warning(
			`${FR}:1:1`,
			'text-not-translated',
			'prey.turtle',
			'"prey.turtle" is not translated; visitors see the English text.',
			'Add a line prey.turtle: with the translation of "Turtle"',
		),
	),
];
