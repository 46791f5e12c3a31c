import type { Measure } from '../codes';
import { exampleAt, exampleFor, lineFor } from '../examples';
import { say, short } from '../parts';
import { didYouMean, MEASURES } from './voice';

/** The names of lines. */
export const KEYS = {
	'unknown-key': (d: { key: string; meant?: string; value?: string; known: string[] }) =>
		say(
			`"${short(d.key)}" is not known here.${didYouMean(d.meant)}`,
			d.meant
				? `Write ${lineFor(d.meant, d.value)}`
				: `Delete the line, or use one of: ${d.known.join(', ')}`,
		),
	'key-spelling': (d: { key: string; meant: string; value?: string }) =>
		say(
			`"${short(d.key)}" is written ${d.meant} here: small letters, British spelling, words joined by an underscore.`,
			`Write ${lineFor(d.meant, d.value)}`,
		),
	'key-in-wrong-place': (d: { key: string; home: string; here: string }) =>
		say(
			`"${d.key}" does not belong ${d.here ? `under ${d.here}` : 'at the left edge'}, but ${d.home ? `under ${d.home}` : 'there'}.`,
			d.home
				? `Move the line below ${d.home}, with two more spaces in front than that line has.`
				: 'Move the line to the left edge, with no spaces in front.',
		),
	'wrong-unit': (d: { key: string; meant: string; measure: Measure; value?: string }) =>
		say(
			`"${d.key}" is in another unit: ${MEASURES[d.measure]}: ${d.meant}`,
			d.value === undefined ? `Write ${exampleFor(d.meant)}` : `Write ${d.meant}: ${d.value}`,
		),
	'unit-missing': (d: { key: string; meant: string; measure: Measure; value?: string }) =>
		say(
			`"${d.key}" does not say its unit: ${MEASURES[d.measure]}: ${d.meant}`,
			d.value === undefined
				? `Write ${exampleFor(d.meant)}`
				: `Write ${d.meant}: ${d.value}, if that is its unit`,
		),
	'missing-key': (d: { path: string; key: string }) =>
		say(`${d.key} is missing.`, `Add a line such as ${exampleAt(d.path)}`),
} as const;
