import { exampleFor } from '../examples';
import { number, say } from '../parts';

/** The folder `replacement/`. */
export const REPLACEMENT = {
	'range-swapped': (d: { path: string; from: number; to: number }) =>
		say(
			`${d.path} goes from ${number(d.from)} down to ${number(d.to)}.`,
			`Swap them: from: ${number(d.to)}, to: ${number(d.from)}`,
		),
	'fixed-name': (d: { found: string; names: readonly string[] }) =>
		say(
			`"${d.found}" is not one of the names that this file may use: ${d.names.join(', ')}.`,
			'Use one of those names, each once.',
		),
	'spacing-missing': () =>
		say(
			'A jaw needs spacing (one number) or spacings (a list), one of the two.',
			`Write ${exampleFor('spacing')}`,
		),
	'spacings-count': (d: { found: number; needed: number }) =>
		say(
			`spacings has ${d.found} numbers; a jaw needs one for each step between two positions, here ${d.needed}.`,
			`Write ${d.needed} numbers, or spacing: 2 for the whole jaw.`,
		),
	'successor-older': (d: { inUse: number; successor: number }) =>
		say(
			`The successor (${number(d.successor)} lines) is not younger than the tooth in use (${number(d.inUse)} lines).`,
			'Check which of the two is which: the tooth in use is the older one.',
		),
	'answer-disagrees': (d: { answer: string; verdict: string }) =>
		say(
			`The answer is "${d.answer}", but its signs (root, base, tip) lead to "${d.verdict}".`,
			`Change the signs, or write answer: ${d.verdict}`,
		),
	'words-missing': (d: { table: string; found: string; file: string }) =>
		say(
			`There are no usable words for "${d.found}" in ${d.file}, so it is left out.`,
			`Add them to ${d.file} under ${d.table}: ${d.found}: { name: A name, line: One line }`,
		),
} as const;
