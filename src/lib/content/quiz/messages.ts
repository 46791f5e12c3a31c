/** What a curator reads about the files of content/quiz/. */

const say = (message: string, remedy: string) => ({ message, remedy });

export const QUIZ_EXAMPLES: Readonly<Record<string, string>> = {
	off: 'off: [caliper]',
	waits_for_s: 'waits_for_s: 300',
	verdict: 'verdict: debated',
	bands: 'bands: [7-11, 11-14]',
	topic: 'topic: ridges',
	specimen: 'specimen: skm-0104',
	specimens: 'specimens: [skm-0104, skm-0112, skm-0131]',
	right: 'right: skm-0112',
	band: 'band: 7-11',
	length: 'length: 10',
	about: 'about: Ridges',
	ask: 'ask: A crocodile keeps its teeth for life.',
	hint: 'hint: Look at the hollow under the crown.',
	because: 'because: The pit was made by the next tooth.',
	why: 'why: { holds: It drops them all its life., wrong: Right. New ones come again and again. }',
};

export const QUIZ_MESSAGES = {
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
			`Add it in ${d.file} under why: ${d.option}: One sentence.`,
		),
	'quiz-words-missing': (d: { table: string; found: string; file: string }) =>
		say(
			`There are no usable words for "${d.found}" in ${d.file}, so it is left out.`,
			`Add them to ${d.file} under ${d.table}: ${d.found}:`,
		),
} as const;
