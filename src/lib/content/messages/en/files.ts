import type { Holds } from '../codes';
import { say, short, type Tongue } from '../parts';
import { didYouMean, list, tongue } from './voice';

/** What a missing file holds, in words. */
const holds = (what: Holds): string =>
	typeof what === 'object'
		? `the facts of the ${what.of} ${what.id}, so it is left out of the exhibit`
		: {
				exhibit: "the museum's name, the languages, the rooms and the screen",
				sources: 'the published works that numbers and statements come from',
				'screen-words': 'the words on buttons and screens in the first language',
			}[what];

/** Files and folders: what is missing, misnamed, unreadable or not translated. */
export const FILES = {
	'folder-unreadable': (d: { reason: string }) =>
		say(
			`The content folder could not be listed (${short(d.reason)}).`,
			'Check that the folder exists and that this computer may read it.',
		),
	'missing-file': (d: { file: string; holds: Holds }) =>
		say(
			`${d.file} is missing. It holds ${holds(d.holds)}.`,
			`Make the file ${d.file}; copy it from the demo exhibit to begin with.`,
		),
	'unreadable-file': (d: { reason: string }) =>
		say(
			`The file could not be read (${short(d.reason)}).`,
			'Close it in other programs, and check that this computer may read it.',
		),
	'file-too-large': (d: { size_kB: number; most_kB: number }) =>
		say(
			`The file has ${d.size_kB} kB; a text file here may have ${d.most_kB} kB at most.`,
			'Check that it is the right file: words for one specimen need a few kB.',
		),
	'empty-file': (d: { example: string }) =>
		say('The file is empty.', `Fill it in, or delete it. It begins like this: ${d.example}`),
	'not-utf8': () =>
		say(
			'The file is not saved as UTF-8, so letters such as é or ñ cannot be read.',
			'Save it again with the encoding UTF-8 (in Notepad: Save as, Encoding: UTF-8).',
		),
	'not-text': () =>
		say(
			'The file holds signs that are not text.',
			'Open it in a text editor, and save it as plain text with the encoding UTF-8.',
		),
	'not-understood': (d: { reason: string }) =>
		say(
			`The file could not be understood (${short(d.reason)}).`,
			'Compare it with the same kind of file of another specimen, or start again from a copy of one.',
		),
	'too-many-problems': (d: { left: number }) =>
		say(
			d.left === 1
				? 'There is 1 more problem in this file.'
				: `There are ${d.left} more problems in this file.`,
			'Put the ones above right first; most of the others will go too.',
		),
	'unknown-file': (d: { meant?: string }) =>
		say(
			`The exhibit does not use this file.${didYouMean(d.meant)}`,
			d.meant
				? `Rename it to ${d.meant}, or move it out of the content folder.`
				: 'Move it out of the content folder, or check its name and folder.',
		),
	'wrong-ending': (d: { found: string; name: string }) =>
		say(`The name ends in ${d.found}, so the file is not used.`, `Rename it to ${d.name}`),
	'bad-name': (d: { found: string; meant: string }) =>
		say(
			`"${short(d.found)}" cannot be a name here: names have small letters a to z, digits and single hyphens only.`,
			`Rename it, for example to ${d.meant}`,
		),
	'bad-id': (d: { found: string; meant: string }) =>
		say(
			`"${short(d.found)}" cannot be an id: ids have small letters a to z, digits and single hyphens only.`,
			`Write it like this: ${d.meant}`,
		),
	'no-language-code': (d: { name: string }) =>
		say('The name does not say which language this is.', `Put the language before the ending: ${d.name}`),
	'wrong-language-code': (d: { found: string; meant?: string; codes: string[]; name: string }) =>
		say(
			`"${d.found}" is not a language of this exhibit. exhibit.yaml lists ${list(d.codes, 'and')}.`,
			d.meant ? `Rename the file to ${d.name}` : `Rename the file, for example to ${d.name}`,
		),
	'language-not-shown': (d: { found: string; codes: string[] }) =>
		say(
			`This file is in "${d.found}", a language that the exhibit does not show. exhibit.yaml lists ${list(d.codes, 'and')}.`,
			`To show it, add a line under languages in exhibit.yaml: - { code: ${d.found}, name: (its own name) }`,
		),
	'missing-text': (d: { file: string; of: 'bed' | 'group' | 'specimen'; id: string; language: Tongue }) =>
		say(
			`The ${d.of} ${d.id} has no usable text in the first language (${tongue(d.language)}), so it is left out of the exhibit.`,
			`Write ${d.file}; copy the same file of another one to begin with.`,
		),
	'missing-translation': (d: { file: string; language: Tongue; first: Tongue; part: 'text' | 'words' }) =>
		say(
			`There is no usable ${tongue(d.language)} text here; visitors who read ${tongue(d.language)} see the ${tongue(d.first)} ${d.part} instead.`,
			`Copy ${d.file} to this name and translate it.`,
		),
} as const;
