import { S1, S2, L1, F1, type BrokenCase } from './brokenContent';
import { edited, VALID_CONTENT } from './validContent';

/** Words for visitors. */
export const brokenWords: BrokenCase[] = [
	{
		name: 'no alt text',
		overlay: edited(L1, 'alt: A stout honey-coloured crown, a little curved\n', ''),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: `${L1}:1:1`,
				id: 'alt-missing',
				severity: 'warning',
				path: 'alt',
				message:
					'alt is missing: it tells people who cannot see the picture what it shows. The short line is read out instead.',
				remedy: 'Add a line such as alt: A stout honey-coloured crown, a little curved',
			},
		],
	},
	{
		name: 'an alt text that repeats the title',
		overlay: edited(
			L1,
			'alt: A stout honey-coloured crown, a little curved',
			'alt: Crown with a cutting edge.',
		),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: `${L1}:4:6`,
				id: 'alt-repeats-title',
				severity: 'warning',
				path: 'alt',
				message: 'alt says the same as the title; it should say what can be seen.',
				remedy: 'Describe shape and colour, for example alt: A stout honey-coloured crown, a little curved',
			},
		],
	},
	{
		name: 'a long sentence',
		overlay: edited(
			L1,
			'A sharp edge runs from tip to base.',
			'Look.\nA sharp edge runs all the way from the very tip of the crown down to its base, and it cut into flesh and bone whenever the animal closed its heavy jaws.',
		),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: `${L1}:9:1`,
				id: 'long-sentence',
				severity: 'warning',
				path: '',
				message:
					'This sentence has 32 words; 25 is the most that visitors read with ease: A sharp edge runs all the…',
				remedy: 'Make two sentences of it.',
			},
		],
	},
	{
		name: 'a long label',
		overlay: edited(
			L1,
			'A sharp edge runs from tip to base.',
			'A sharp edge runs from tip to base. '.repeat(15),
		),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: `${L1}:8:1`,
				id: 'long-label',
				severity: 'warning',
				path: '',
				message: 'The text has 120 words; 100 is the most that visitors read while standing.',
				remedy: 'Leave out what the tooth itself shows.',
			},
		],
	},
	{
		name: 'a text of long words',
		overlay: edited(
			L1,
			'A sharp edge runs from tip to base.',
			'The numerous vertical ridges of this crown may indicate the capture of slippery animals in open water. Comparison with other material from the same locality would help to determine the question. The enamel is well preserved.',
		),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: `${L1}:8:1`,
				id: 'hard-to-read',
				severity: 'warning',
				path: '',
				message:
					'The text is hard to read: its reading ease is 39, on a scale from 0 (very hard) to 100 (very easy); 50 or more is wanted here.',
				remedy:
					'Make short sentences of long ones, and put everyday words in place of long ones. Then read it aloud.',
			},
		],
	},
	{
		name: 'words that leave no doubt',
		overlay: {
			...edited(L1, 'A sharp edge runs from tip to base.', 'Look.\nThe *edge* proves that it cut flesh.'),
			...edited(
				F1,
				'Une arête coupante va de la pointe à la base.',
				'L’arête coupait certainement la chair.',
			),
		},
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: `${L1}:9:12`,
				id: 'too-certain',
				severity: 'warning',
				path: '',
				message: '"proves" leaves no doubt; from an old tooth few things are known so surely.',
				remedy: 'If others may see it differently, write "suggests" or "may". If not, leave it as it is.',
			},
			{
				at: `${F1}:8:17`,
				id: 'too-certain',
				severity: 'warning',
				path: '',
				message: '"certainement" leaves no doubt; from an old tooth few things are known so surely.',
				remedy:
					'If others may see it differently, write "laisse penser" or "peut-être". If not, leave it as it is.',
			},
		],
	},
	{
		name: 'a feature without a name',
		overlay: edited(L1, 'edge: Cutting edge', 'egde: Cutting edge'),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: `${L1}:5:1`,
				id: 'feature-without-name',
				severity: 'error',
				path: 'features.edge',
				message: 'The feature "edge" of specimen.yaml has no name here, so it is not marked on the tooth.',
				remedy: 'Add under features: edge: Cutting edge',
			},
			{
				at: `${L1}:6:3`,
				id: 'name-without-feature',
				severity: 'warning',
				path: 'features.egde',
				message: 'specimen.yaml marks no feature "egde", so this name is not shown. Did you mean edge?',
				remedy: 'Write edge in place of egde.',
			},
		],
	},
	{
		name: 'a feature without a translated name',
		overlay: edited(F1, 'features:\n  edge: Arête coupante\n', ''),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: `${F1}:1:1`,
				id: 'feature-not-translated',
				severity: 'warning',
				path: 'features.edge',
				message: 'The feature "edge" has no name here; visitors see it in English.',
				remedy: 'Add its translation under features: edge: Cutting edge',
			},
		],
	},
	{
		name: 'a picture and code in the text',
		overlay: edited(
			L1,
			'A sharp edge runs from tip to base.',
			'A ![sharp](x.png) edge.\n\nA <b>bold</b> word.',
		),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: `${L1}:8:3`,
				id: 'picture-left-out',
				severity: 'warning',
				path: '',
				message: 'Pictures in the text are not shown: the tooth itself is the picture.',
				remedy: 'Delete the part that looks like ![words](address)',
			},
			{
				at: `${L1}:10:3`,
				id: 'code-shown-as-text',
				severity: 'warning',
				path: '',
				message: '<b> would be shown letter by letter; only Markdown is understood here.',
				remedy: 'Use *stars* for italics and **two stars** for bold.',
			},
		],
	},
	{
		name: 'text for a bed',
		overlay: { 'beds/upper-marl.en.md': `${VALID_CONTENT['beds/upper-marl.en.md']}A soft chalk.\n` },
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: 'beds/upper-marl.en.md:5:1',
				id: 'text-not-shown',
				severity: 'warning',
				path: '',
				message: 'The text below the short lines is not shown for this kind of file.',
				remedy: 'Move what matters into the line short: and delete the rest.',
			},
		],
	},
	{
		name: 'braces that do not fit together',
		overlay: edited('ui/fr.yaml', 'size: "{value} mm"', 'size: "{value mm"'),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: 'ui/fr.yaml:3:7',
				id: 'bad-message',
				severity: 'error',
				path: 'size',
				message:
					'This text cannot be filled in: the name between { and } is one word of letters, digits and _.',
				remedy: 'Write each filler in its own pair of braces, for example "{count} teeth". Found: {value mm',
			},
		],
	},
	{
		name: 'broken braces in the first language',
		overlay: edited('ui/en.yaml', 'one {# tooth} other {# teeth}}"', 'one {# tooth}}"'),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: 'ui/en.yaml:2:8',
				id: 'bad-message',
				severity: 'error',
				path: 'teeth',
				message: 'This text cannot be filled in: the choice other {…} is missing.',
				remedy:
					'Write each filler in its own pair of braces, for example "{count} teeth". Found: {count, plural, one {# tooth}}',
			},
		],
	},
	{
		name: 'fillers of other names',
		overlay: edited('ui/fr.yaml', 'size: "{value} mm"', 'size: "{valeur} mm"'),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: 'ui/fr.yaml:3:7',
				id: 'placeholder-mismatch',
				severity: 'error',
				path: 'size',
				message:
					'The fillers in braces are not those of the English text: {value} is missing; {valeur} is not known there. The English text is shown instead.',
				remedy: 'Keep {value} exactly as in the English text.',
			},
		],
	},
	{
		name: 'a screen text without translation',
		overlay: edited('ui/fr.yaml', 'start_title: Que dit une dent ?\n', ''),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: 'ui/fr.yaml:1:1',
				id: 'text-not-translated',
				severity: 'warning',
				path: 'start_title',
				message: '"start_title" is not translated; visitors see the English text.',
				remedy: 'Add a line start_title: with the translation of "What can a tooth tell?"',
			},
		],
	},
	{
		name: 'a screen text that is not used',
		overlay: edited('ui/fr.yaml', 'start_title:', 'start_titel:'),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: 'ui/fr.yaml:1:1',
				id: 'text-not-used',
				severity: 'warning',
				path: 'start_titel',
				message: '"start_titel" does not stand in ui/en.yaml, so it is not shown. Did you mean start_title?',
				remedy: 'Write start_title in place of start_titel.',
			},
			{
				at: 'ui/fr.yaml:1:1',
				id: 'text-not-translated',
				severity: 'warning',
				path: 'start_title',
				message: '"start_title" is not translated; visitors see the English text.',
				remedy: 'Add a line start_title: with the translation of "What can a tooth tell?"',
			},
		],
	},
	{
		name: 'no screen texts in the first language',
		overlay: { 'ui/en.yaml': null },
		shows: null,
		problems: [
			{
				at: 'ui/en.yaml:1:1',
				id: 'missing-file',
				severity: 'error',
				path: '',
				message: 'ui/en.yaml is missing. It holds the words on buttons and screens in the first language.',
				remedy: 'Make the file ui/en.yaml; copy it from the demo exhibit to begin with.',
			},
		],
	},
	{
		name: 'settings that cannot be used',
		overlay: edited('exhibit.yaml', 'screen: { diagonal_in: 32, width_px: 1920, height_px: 1080 }\n', ''),
		shows: null,
		problems: [
			{
				at: 'exhibit.yaml:1:1',
				id: 'missing-key',
				severity: 'error',
				path: 'screen',
				message: 'screen is missing.',
				remedy: 'Add a line such as screen: { diagonal_in: 32, width_px: 1920, height_px: 1080 }',
			},
		],
	},
	{
		name: 'a number sign that cuts a text',
		overlay: edited(L1, 'title: Crown with a cutting edge', 'title: Crown #4'),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: `${L1}:2:14`,
				id: 'hash-cuts-text',
				severity: 'warning',
				path: 'title',
				message: 'Everything after the # sign is taken as a note and not shown: Crown #4',
				remedy: 'If it belongs to the text, put the text in quotes: title: "Crown #4"',
			},
		],
	},
	{
		name: 'several mistakes at once',
		overlay: {
			...edited(
				S1,
				'part: shed-crown\npreservation: honey\nbed: upper-marl',
				'part: crwn\npreservaton: honey\nbed: lower',
			),
			...edited(L1, 'title: Crown', 'titel: Crown'),
		},
		shows: ['skm-0002'],
		problems: [
			{
				at: `${L1}:2:1`,
				id: 'unknown-key',
				severity: 'error',
				path: 'titel',
				message: '"titel" is not known here. Did you mean title?',
				remedy: 'Write title: Crown with a cutting edge',
			},
			{
				at: `${S1}:3:7`,
				id: 'wrong-choice',
				severity: 'error',
				path: 'part',
				message: '"crwn" is not possible for part: it is crown, shed-crown, rooted-tooth, germ or jaw-piece.',
				remedy: 'Did you mean part: crown?',
			},
			{
				at: `${S1}:4:1`,
				id: 'unknown-key',
				severity: 'error',
				path: 'preservaton',
				message: '"preservaton" is not known here. Did you mean preservation?',
				remedy: 'Write preservation: honey',
			},
			{
				at: `${S1}:5:6`,
				id: 'unknown-bed',
				severity: 'error',
				path: 'bed',
				message: 'There is no bed "lower": beds/lower.yaml does not exist.',
				remedy: 'Write the id of a file in beds/, or make that file.',
			},
		],
	},
	{
		name: 'a number that nobody is named for',
		overlay: {
			...edited(S2, 'sources: [skerrow-model]', 'sources: []'),
			...edited(
				'specimens/skm-0002/label.en.md',
				'The root is whole.',
				'The root is whole.\n\nIt fed for 40 days.',
			),
		},
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: 'specimens/skm-0002/label.en.md:8:12',
				id: 'number-without-source',
				severity: 'warning',
				path: '',
				message: 'The text says "40 days", but specimens/skm-0002/specimen.yaml names no source for it.',
				remedy: 'Name who says so, for example sources: [leidy-1865], or leave the number out.',
			},
		],
	},
];
