import { say } from '../parts';

/** The folder `quiz/`. */
export const QUIZ = {
	'right-not-shown': (d: { right: string; specimens: readonly string[] }) =>
		say(
			`The right answer is ${d.right}, but that is not one of the three specimens (${d.specimens.join(', ')}).`,
			`Write one of them, for example right: ${d.specimens[0] ?? 'skm-0104'}`,
		),
	'same-specimen-twice': (d: { found: string }) =>
		say(`${d.found} stands twice among the three specimens.`, 'Name three different ones.'),
	'quiz-specimen-unknown': (d: { found: string; meant?: string }) =>
		say(
			`There is no specimen ${d.found}, so this question is left out.`,
			d.meant ? `Did you mean ${d.meant}?` : 'Write the name of a folder in specimens/.',
		),
	'why-missing': (d: { option: string; file: string }) =>
		say(
			`Nothing says why "${d.option}" is right or wrong. Every answer has to teach something.`,
			`Add it in ${d.file || 'this file'} under why: ${d.option}: One sentence.`,
		),
	'quiz-words-missing': (d: { table: string; found: string; file: string }) =>
		say(
			`There are no usable words for "${d.found}" in ${d.file}, so it is left out.`,
			`Add them to ${d.file} under ${d.table}: ${d.found}:`,
		),
} as const;
