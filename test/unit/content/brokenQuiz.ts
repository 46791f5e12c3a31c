import type { BrokenCase } from './brokenContent';

const ALL = ['skm-0001', 'skm-0002'];
const WHY = 'why: { holds: Yes., wrong: No., debated: No. }';
const words = (table: string, id: string, why = WHY) =>
	Object.fromEntries(
		['en', 'fr'].map((code) => [
			`quiz/${code}.yaml`,
			`${table}:\n  ${id}:\n    about: Ridges\n    ask: Is it so?\n    hint: Look.\n    because: It is.\n    ${why}\n`,
		]),
	);
const claim = (lines: string) => ({
	'quiz/claims.yaml': `ridges:\n  ${lines.replace(/\n/g, '\n  ')}\n`,
	...words('claims', 'ridges'),
});
const question = (lines: string) => ({
	'quiz/questions.yaml': `oldest:\n  ${lines.replace(/\n/g, '\n  ')}\n`,
	...words('questions', 'oldest'),
});

/** Files of content/quiz/; the specimens are shown whatever is wrong with these. */
export const brokenQuiz: BrokenCase[] = [
	{
		name: 'a kind of question that does not exist',
		overlay: { 'quiz/settings.yaml': 'off: [calliper]\n' },
		shows: ALL,
		problems: [
			{
				at: 'quiz/settings.yaml:1:7',
				id: 'wrong-choice',
				severity: 'error',
				path: 'off[0]',
				message:
					'"calliper" is not possible for off: it is choose, touch, place, order, match, caliper, shed, position or claim.',
				remedy: 'Did you mean off: caliper?',
			},
		],
	},
	{
		name: 'a claim without a source',
		overlay: claim('verdict: debated\nbands: [7-11]\ntopic: ridges'),
		shows: ALL,
		problems: [
			{
				at: 'quiz/claims.yaml:1:1',
				id: 'missing-key',
				severity: 'error',
				path: 'ridges.sources',
				message: 'sources is missing.',
				remedy: 'Add a line such as sources: [leidy-1865]',
			},
		],
	},
	{
		name: 'a claim with a verdict that is none',
		overlay: claim('verdict: true\nbands: [7-11]\ntopic: ridges\nsources: [leidy-1865]'),
		shows: ALL,
		problems: [
			{
				at: 'quiz/claims.yaml:2:12',
				id: 'wrong-choice',
				severity: 'error',
				path: 'ridges.verdict',
				message: '"true" is not possible for verdict: it is holds, wrong or debated.',
				remedy: 'Write verdict: debated',
			},
		],
	},
	{
		name: 'a claim about a specimen that does not exist',
		overlay: claim('verdict: holds\nbands: [7-11]\ntopic: ridges\nspecimen: skm-001\nsources: [leidy-1865]'),
		shows: ALL,
		problems: [
			{
				at: 'quiz/claims.yaml:5:3',
				id: 'quiz-specimen-unknown',
				severity: 'error',
				path: 'ridges.specimen',
				message: 'There is no specimen skm-001, so this question is left out.',
				remedy: 'Did you mean skm-0001?',
			},
		],
	},
	{
		name: 'a question whose right answer is not shown',
		overlay: question(
			'bands: [5-7]\ntopic: life\nspecimens: [skm-0001, skm-0002, skm-0003]\nright: skm-0004',
		),
		shows: ALL,
		problems: [
			{
				at: 'quiz/questions.yaml:5:3',
				id: 'right-not-shown',
				severity: 'error',
				path: 'oldest.right',
				message:
					'The right answer is skm-0004, but that is not one of the three specimens (skm-0001, skm-0002, skm-0003).',
				remedy: 'Write one of them, for example right: skm-0001',
			},
		],
	},
	{
		name: 'a question that shows a specimen twice',
		overlay: question(
			'bands: [5-7]\ntopic: life\nspecimens: [skm-0001, skm-0002, skm-0001]\nright: skm-0001',
		),
		shows: ALL,
		problems: [
			{
				at: 'quiz/questions.yaml:4:3',
				id: 'same-specimen-twice',
				severity: 'error',
				path: 'oldest.specimens',
				message: 'skm-0001 stands twice among the three specimens.',
				remedy: 'Name three different ones.',
			},
		],
	},
	{
		name: 'a claim of which one answer has no reason',
		overlay: {
			...claim('verdict: holds\nbands: [7-11]\ntopic: ridges\nsources: [leidy-1865]'),
			...words('claims', 'ridges', 'why: { holds: Yes., wrong: No. }'),
		},
		shows: ALL,
		problems: [
			{
				at: 'quiz/claims.yaml:1:1',
				id: 'quiz-words-missing',
				severity: 'error',
				path: 'ridges',
				message: 'There are no usable words for "ridges" in quiz/en.yaml, so it is left out.',
				remedy: 'Add them to quiz/en.yaml under claims: ridges:',
			},
			{
				at: 'quiz/en.yaml:7:5',
				id: 'why-missing',
				severity: 'error',
				path: 'claims.ridges.why',
				message: 'Nothing says why "debated" is right or wrong. Every answer has to teach something.',
				remedy: 'Add it in this file under why: debated: One sentence.',
			},
			{
				at: 'quiz/fr.yaml:7:5',
				id: 'why-missing',
				severity: 'error',
				path: 'claims.ridges.why',
				message: 'Nothing says why "debated" is right or wrong. Every answer has to teach something.',
				remedy: 'Add it in this file under why: debated: One sentence.',
			},
		],
	},
	{
		name: 'a round without a name, and a name without its round',
		overlay: {
			'quiz/rounds.yaml': 'year-four: { band: 7-11, length: 10, seed: 4712 }\n',
			'quiz/en.yaml': 'rounds: { year-fuor: { name: Year 4 } }\n',
			'quiz/fr.yaml': 'rounds: { year-four: { name: CM1 } }\n',
		},
		shows: ALL,
		problems: [
			{
				at: 'quiz/en.yaml:1:11',
				id: 'text-not-used',
				severity: 'warning',
				path: 'rounds.year-fuor',
				message:
					'"year-fuor" does not stand in quiz/rounds.yaml, so it is not shown. Did you mean year-four?',
				remedy: 'Write year-four in place of year-fuor.',
			},
			{
				at: 'quiz/rounds.yaml:1:1',
				id: 'quiz-words-missing',
				severity: 'error',
				path: 'year-four',
				message: 'There are no usable words for "year-four" in quiz/en.yaml, so it is left out.',
				remedy: 'Add them to quiz/en.yaml under rounds: year-four:',
			},
		],
	},
	{
		name: 'a round of a length that there is not',
		overlay: {
			'quiz/rounds.yaml': 'year-four: { band: 7-11, length: 12, seed: 4712 }\n',
			'quiz/en.yaml': 'rounds: { year-four: { name: Year 4 } }\n',
			'quiz/fr.yaml': 'rounds: { year-four: { name: CM1 } }\n',
		},
		shows: ALL,
		problems: [
			{
				at: 'quiz/rounds.yaml:1:34',
				id: 'wrong-choice',
				severity: 'error',
				path: 'year-four.length',
				message: '"12" is not possible for length: it is 5, 10 or 15.',
				remedy: 'Did you mean length: 10?',
			},
		],
	},
	{
		name: 'a misnamed file of the quiz',
		overlay: { 'quiz/claim.yaml': 'ridges: { verdict: holds }\n' },
		shows: ALL,
		problems: [
			{
				at: 'quiz/claim.yaml:1:1',
				id: 'unknown-file',
				severity: 'warning',
				path: '',
				message: 'The exhibit does not use this file. Did you mean claims.yaml?',
				remedy: 'Rename it to claims.yaml, or move it out of the content folder.',
			},
		],
	},
];
