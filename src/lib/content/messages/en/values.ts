import type { AddressFault } from '../../readAddress';
import type { Mark } from '../codes';
import { exampleAt, exampleFor } from '../examples';
import { atLeast, atMost, lastKey, number, say, short, type Found } from '../parts';
import { list, MARKS, nameOf, shown } from './voice';

/** The values behind the names. */
export const VALUES = {
	'empty-value': (d: { path: string }) =>
		say(`${nameOf(d.path)} has no value.`, `Write one, for example ${exampleAt(d.path)}`),
	'decimal-comma': (d: Found & { meant: string }) =>
		say(
			`"${shown(d.found)}" has a decimal comma; numbers have a decimal point here.`,
			`Write ${lastKey(d.path)}: ${d.meant}`,
		),
	'number-with-unit': (d: Found & { meant?: string; unit?: string }) =>
		say(
			`"${short(shown(d.found))}" has a unit in it; the value is a number alone${d.unit ? `, and ${d.unit} is in its name` : ''}.`,
			d.meant ? `Write ${lastKey(d.path)}: ${d.meant}` : `Write ${exampleAt(d.path)}`,
		),
	'number-in-quotes': (d: Found) =>
		say(
			`"${shown(d.found)}" is in quotes, which makes it a text; a number is expected.`,
			`Write ${lastKey(d.path)}: ${shown(d.found).trim()}`,
		),
	'not-a-number': (d: Found) =>
		say(`A number is expected here, but "${short(shown(d.found))}" was found.`, `Write ${exampleAt(d.path)}`),
	'not-whole': (d: Found & { meant: string }) =>
		say(
			`A whole number is expected here, but ${shown(d.found)} was found.`,
			`Write ${lastKey(d.path)}: ${d.meant}`,
		),
	'out-of-range': (d: Found & { min?: number; max?: number }) => {
		const name = lastKey(d.path);
		const least = d.min === undefined ? '' : atLeast(d.min);
		const most = d.max === undefined ? '' : atMost(d.max);
		const range = least && most ? `from ${least} to ${most}` : most ? `at most ${most}` : `at least ${least}`;
		const near = least && (Number(d.found) < Number(least) || !most) ? least : most;
		const found = Number.isFinite(Number(d.found)) ? number(Number(d.found)) : shown(d.found);
		return say(
			`${name} is ${found}; it can be ${range}.`,
			`Check the number and its unit; the nearest possible is ${name}: ${near}`,
		);
	},
	'not-a-point': (d: Found) =>
		say(
			`${lastKey(d.path)} is three numbers in brackets, but ${short(shown(d.found))} was found.`,
			`Write ${exampleAt(d.path)}, with decimal points`,
		),
	'marks-coincide': (d: { first: Mark; second: Mark }) =>
		say(
			`The ${MARKS[d.first]} and the ${MARKS[d.second]} of the crown are marked at the same place.`,
			'Mark each at its own place: the apex is the tip, the base points are the front and the back of the crown’s base.',
		),
	'no-direction': () =>
		say(
			'labial is a direction, and three zeros point nowhere.',
			`Write which way the lip side looks in the scan, for example ${exampleFor('labial')}, or delete the line.`,
		),
	'not-yes-no': (d: Found & { meant?: boolean }) =>
		say(
			`true or false is expected here, but "${short(shown(d.found))}" was found.`,
			d.meant === undefined ? `Write ${exampleAt(d.path)}` : `Write ${lastKey(d.path)}: ${d.meant}`,
		),
	'text-needs-quotes': (d: Found) =>
		say(
			`A text is expected here, but ${short(shown(d.found))} is taken as a number or as true or false.`,
			`Put it in quotes: ${lastKey(d.path)}: "${short(shown(d.found))}"`,
		),
	'not-one-text': (d: { path: string }) =>
		say(
			`A single text is expected for ${nameOf(d.path)}, but several values were found.`,
			`Write ${exampleAt(d.path)}`,
		),
	'not-a-list': (d: Found) =>
		say(
			`A list is expected for ${nameOf(d.path)}, but a single value was found.`,
			`Put it in brackets, for example ${exampleAt(d.path)}`,
		),
	'list-empty': (d: { path: string }) =>
		say(`The list ${nameOf(d.path)} is empty; it needs one entry at least.`, `Write ${exampleAt(d.path)}`),
	'not-fields': (d: { path: string; example: string }) =>
		say(
			`Lines of the form "name: value" are expected for ${nameOf(d.path)}.`,
			`Write them like this: ${d.example}`,
		),
	'wrong-choice': (d: Found & { choices: string[]; meant?: string }) =>
		say(
			`"${short(shown(d.found))}" is not possible for ${lastKey(d.path)}: it is ${list(d.choices)}.`,
			d.meant ? `Did you mean ${lastKey(d.path)}: ${d.meant}?` : `Write ${exampleAt(d.path)}`,
		),
	'not-a-side': (d: Found & { meant?: string }) =>
		say(
			`"${short(shown(d.found))}" is not a side of a tooth: it is mesial, distal, labial or lingual, or degrees (0 distal, 90 labial, 180 mesial, 270 lingual).`,
			`Write where: ${d.meant ?? 'distal'}`,
		),
	'unknown-room': (d: { found: string; choices: string[]; meant?: string }) =>
		say(
			`There is no room "${short(d.found)}". The rooms are ${list(d.choices, 'and')}.`,
			d.meant ? `Did you mean ${d.meant}?` : 'Delete it, or write one of these, for example rooms: [compare]',
		),
	'bad-code': (d: { found: string; meant?: string }) =>
		say(
			`"${short(d.found)}" is not a language code: that is two small letters (three where a language has no two).`,
			`Write code: ${d.meant ?? 'en'}`,
		),
	'bad-licence': (d: { found: string; meant?: string }) =>
		say(
			`"${short(d.found, 90)}" is not the address of a Creative Commons licence or of a RightsStatements.org statement.`,
			`Write ${d.meant ? `licence: ${d.meant}` : `the http address to its last slash: ${exampleFor('licence')}`}`,
		),
	'bad-address': (d: { found: string; why: AddressFault }) =>
		say(
			{
				unreadable: `"${short(d.found)}" is not a web address.`,
				'not-https': `"${short(d.found)}" does not begin with https://, so phones would warn visitors of it.`,
				name: `"${short(d.found)}" holds a user name or a password, which everyone could read off the screen.`,
				more: `"${short(d.found)}" goes on after a ? or a #; the screen adds such an end itself.`,
			}[d.why],
			`Write the address of the start page, for example ${exampleFor('public_address')}`,
		),
	'bad-doi': (d: { found: string; meant?: string }) =>
		say(
			`"${short(d.found)}" is not a DOI; a DOI begins with 10.`,
			`Write ${d.meant ? `doi: ${d.meant}` : exampleFor('doi')}`,
		),
	'ages-swapped': (d: { oldest: number; youngest: number }) =>
		say(
			`The youngest age (${d.youngest}) is older than the oldest (${d.oldest}); ages are millions of years ago.`,
			`Swap them: oldest_ma: ${d.youngest} and youngest_ma: ${d.oldest}`,
		),
	'idle-too-short': (d: { found: number; least: number }) =>
		say(
			`After ${d.found} seconds without a touch the screen asks whether anybody is there; a slow reader is then still reading.`,
			`Write warn_after_s: ${d.least} or more.`,
		),
	'warning-too-short': (d: { found: number }) =>
		say(
			`Visitors get ${d.found} seconds to say that they are still there; some need 20 seconds at least.`,
			'Write reset_after_warning_s: 20 or more.',
		),
} as const;
