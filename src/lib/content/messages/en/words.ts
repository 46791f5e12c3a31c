import type { MessageFault } from '../codes';
import { exampleFor } from '../examples';
import { say, short, type Tongue } from '../parts';
import { didYouMean, tongue } from './voice';

const MESSAGE_FAULTS: Readonly<Record<MessageFault, string>> = {
	'brace-open': 'a closing } is missing',
	'apostrophe-open': 'an apostrophe opens and is never closed',
	'brace-empty': 'there is nothing between { and }',
	'bad-filler': 'the name between { and } is one word of letters, digits and _',
	'no-type': 'number, plural or select is missing after the comma',
	'bad-type': 'only number, plural or select may follow the comma',
	'no-other': 'the choice other {…} is missing',
	'bad-choices': 'choices are written {count, plural, one {# tooth} other {# teeth}}',
	tag: 'a < with a letter behind it is not possible here',
};

/** Words for visitors. */
export const WORDS = {
	'alt-missing': () =>
		say(
			'alt is missing: it tells people who cannot see the picture what it shows. The short line is read out instead.',
			`Add a line such as ${exampleFor('alt')}`,
		),
	'alt-repeats-title': () =>
		say(
			'alt says the same as the title; it should say what can be seen.',
			`Describe shape and colour, for example ${exampleFor('alt')}`,
		),
	'long-sentence': (d: { words: number; most: number; begins: string }) =>
		say(
			`This sentence has ${d.words} words; ${d.most} is the most that visitors read with ease: ${d.begins}`,
			'Make two sentences of it.',
		),
	'long-label': (d: { words: number; most: number }) =>
		say(
			`The text has ${d.words} words; ${d.most} is the most that visitors read while standing.`,
			'Leave out what the tooth itself shows.',
		),
	'hard-to-read': (d: { ease: number; least: number }) =>
		say(
			`The text is hard to read: its reading ease is ${d.ease}, on a scale from 0 (very hard) to 100 (very easy); ${d.least} or more is wanted here.`,
			'Make short sentences of long ones, and put everyday words in place of long ones. Then read it aloud.',
		),
	'too-certain': (d: { word: string; language: string }) =>
		say(
			`"${d.word}" leaves no doubt; from an old tooth few things are known so surely.`,
			`If others may see it differently, write ${{ fr: '"laisse penser" or "peut-être"', es: '"sugiere" or "quizá"' }[d.language] ?? '"suggests" or "may"'}. If not, leave it as it is.`,
		),
	'number-without-source': (d: { found: string; file: string }) =>
		say(
			`The text says "${short(d.found)}", but ${d.file} names no source for it.`,
			`Name who says so, for example ${exampleFor('sources')}, or leave the number out.`,
		),
	'picture-left-out': () =>
		say(
			'Pictures in the text are not shown: the tooth itself is the picture.',
			'Delete the part that looks like ![words](address)',
		),
	'code-shown-as-text': (d: { found: string }) =>
		say(
			`${short(d.found, 30)} would be shown letter by letter; only Markdown is understood here.`,
			'Use *stars* for italics and **two stars** for bold.',
		),
	'text-not-shown': () =>
		say(
			'The text below the short lines is not shown for this kind of file.',
			'Move what matters into the line short: and delete the rest.',
		),
	'bad-message': (d: { found: string; why: MessageFault }) =>
		say(
			`This text cannot be filled in: ${MESSAGE_FAULTS[d.why]}.`,
			`Write each filler in its own pair of braces, for example "{count} teeth". Found: ${short(d.found, 80)}`,
		),
	'placeholder-mismatch': (d: { missing: string[]; extra: string[]; language: Tongue }) =>
		say(
			`The fillers in braces are not those of the ${tongue(d.language)} text:${d.missing.length ? ` ${d.missing.join(', ')} is missing` : ''}${d.missing.length && d.extra.length ? ';' : ''}${d.extra.length ? ` ${d.extra.join(', ')} is not known there` : ''}. The ${tongue(d.language)} text is shown instead.`,
			d.missing.length
				? `Keep ${d.missing.join(' and ')} exactly as in the ${tongue(d.language)} text.`
				: `Take out ${d.extra.join(' and ')}.`,
		),
	'text-not-translated': (d: { key: string; language: Tongue; shown: string }) =>
		say(
			`"${d.key}" is not translated; visitors see the ${tongue(d.language)} text.`,
			`Add a line ${d.key}: with the translation of "${short(d.shown)}"`,
		),
	'text-not-used': (d: { key: string; meant?: string; file: string }) =>
		say(
			`"${short(d.key)}" does not stand in ${d.file}, so it is not shown.${didYouMean(d.meant)}`,
			d.meant
				? `Write ${d.meant} in place of ${short(d.key)}.`
				: `Delete the line, or add it to ${d.file} first.`,
		),
} as const;
