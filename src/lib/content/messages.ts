/**
 * Every word that a curator reads about a file, in one place.
 * A message says what was found and what is expected; a remedy says what to do, with one correct example.
 * Ids are stable: tests, notes and habits rest on them.
 */

import type { AddressFault } from './readAddress';
import { ANIMAL_EXAMPLES, ANIMAL_MESSAGES } from './animalMessages';
import { QUIZ_EXAMPLES, QUIZ_MESSAGES } from './quiz/messages';
import { REPLACEMENT_EXAMPLES, REPLACEMENT_MESSAGES } from './replacement/messages';
import { FEEDING_EXAMPLES, FEEDING_MESSAGES } from './feedingMessages';

const list = (words: readonly string[], join = 'or') =>
	words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${join} ${words[words.length - 1]}`;
const short = (text: string, most = 60) => {
	const line = text.replace(/\s+/g, ' ').trim();
	return line.length > most ? `${line.slice(0, most - 1).trimEnd()}…` : line;
};
const quoted = (text: string) => `"${text.replace(/"/g, "'")}"`;
/** Numbers as a person writes them; a limit is rounded to its safe side. */
const number = (value: number) => String(Number(value.toPrecision(4)));
const atMost = (value: number) => rounded(value, Math.floor);
const atLeast = (value: number) => rounded(value, Math.ceil);
function rounded(value: number, towards: (n: number) => number): string {
	if (value === 0 || !Number.isFinite(value)) return String(value);
	const step = 10 ** (2 - Math.floor(Math.log10(Math.abs(value))));
	// a hair of slack, so that 0.3 does not become 0.299
	const slack = towards === Math.floor ? 1e-9 : -1e-9;
	return String(Number((towards(value * step + slack) / step).toPrecision(3)));
}
const say = (message: string, remedy: string) => ({ message, remedy });

/** One correct line for each key of the files. */
const EXAMPLES: Readonly<Record<string, string>> = {
	museum: 'museum: Skerrow Museum',
	languages: 'languages: [{ code: en, name: English }]',
	code: 'code: en',
	rooms: 'rooms: [compare]',
	screen: 'screen: { diagonal_in: 32, width_px: 1920, height_px: 1080 }',
	diagonal_in: 'diagonal_in: 32',
	width_px: 'width_px: 1920',
	bottom_edge_mm: 'bottom_edge_mm: 780',
	public_address: 'public_address: https://teeth.skerrow.example',
	height_px: 'height_px: 1080',
	idle: 'idle: { warn_after_s: 100, reset_after_warning_s: 25 }',
	warn_after_s: 'warn_after_s: 100',
	reset_after_warning_s: 'reset_after_warning_s: 25',
	contact: 'contact: The front desk',
	citation: 'citation: "Leidy, J. 1865. Cretaceous Reptiles of the United States, p. 63."',
	tag: 'tag: seen',
	doi: 'doi: 10.1000/xyz123',
	name: 'name: Mosasaurus',
	short: "short: A meat cutter's tooth, shed and replaced",
	title: 'title: Sea-lizard crown with two edges',
	alt: 'alt: A stout honey-coloured crown, a little curved',
	features: 'features: [{ id: edge, at: 0.6, where: distal }]',
	latin: 'latin: Mosasaurus',
	living: 'living: false',
	habitat: 'habitat: sea',
	sources: 'sources: [leidy-1865]',
	oldest_ma: 'oldest_ma: 70',
	youngest_ma: 'youngest_ma: 67',
	accession: 'accession: SKM 0104',
	group: 'group: mosasaurus',
	bed: 'bed: upper-marl',
	part: 'part: shed-crown',
	preservation: 'preservation: honey',
	identified: 'identified: { by: Skerrow Museum, certainty: likely }',
	by: 'by: Skerrow Museum',
	certainty: 'certainty: likely',
	shape: 'shape: { scan: { file: scan.stl, units: mm } }',
	file: 'file: scan.stl',
	units: 'units: mm',
	colour: 'colour: plain',
	based_on: 'based_on: [leidy-1865]',
	crown_height_mm: 'crown_height_mm: 38.1',
	base_length_mm: 'base_length_mm: 25.4',
	base_width_mm: 'base_width_mm: 21.2',
	sections: 'sections: [{ at: 0, shape: oval }]',
	taper: 'taper: bullet',
	curve: 'curve: { distal_deg: 14, lingual_deg: 6, starts_at: 0.3 }',
	distal_deg: 'distal_deg: 14',
	lingual_deg: 'lingual_deg: 6',
	starts_at: 'starts_at: 0.3',
	tip_radius_mm: 'tip_radius_mm: 1.2',
	carinae: 'carinae: [{ where: mesial, prominence_mm: 0.7, from: 0.05 }]',
	where: 'where: distal',
	prominence_mm: 'prominence_mm: 0.7',
	from: 'from: 0.05',
	to: 'to: 0.8',
	at: 'at: 0.6',
	count: 'count: 24',
	height_mm: 'height_mm: 0.4',
	sides: 'sides: all',
	side: 'side: labial',
	angle_deg: 'angle_deg: 20',
	depth_mm: 'depth_mm: 1.2',
	alternating: 'alternating: true',
	constriction: 'constriction: 0.1',
	length_mm: 'length_mm: 7',
	swelling: 'swelling: 1.2',
	folded: 'folded: false',
	root: 'root: { state: none }',
	state: 'state: none',
	pit_side: 'pit_side: lingual',
	pit_depth_mm: 'pit_depth_mm: 5',
	opening: 'opening: 0.5',
	licence: 'licence: http://creativecommons.org/licenses/by/4.0/',
	rights_holder: 'rights_holder: Skerrow Museum',
	id: 'id: edge',
	width_factor: 'width_factor: 0.9',
	serrations_per_5mm: 'serrations_per_5mm: 12',
	serration_depth_mm: 'serration_depth_mm: 0.2',
	ridges: 'ridges: { count: 24, height_mm: 0.4, sides: all, from: 0, to: 0.8, alternating: true }',
	neck: 'neck: { constriction: 0.1, length_mm: 2 }',
	pulp: 'pulp: { height_mm: 6, opening: 0.5 }',
	wear: 'wear: { tip_worn_to_mm: 36.8 }',
	tip_worn_to_mm: 'tip_worn_to_mm: 36.8',
	facets: 'facets: [{ side: labial, angle_deg: 20, depth_mm: 1.2, at: 0.8 }]',
	scan: 'scan: { file: scan.stl, units: mm }',
	crown:
		'crown: { apex_mm: [2.1, 4.8, 60.3], base_mesial_mm: [-9.5, 0.2, 18], base_distal_mm: [9.1, 0.4, 18.2] }',
	apex_mm: 'apex_mm: [2.1, 4.8, 60.3]',
	base_mesial_mm: 'base_mesial_mm: [-9.5, 0.2, 18]',
	base_distal_mm: 'base_distal_mm: [9.1, 0.4, 18.2]',
	labial: 'labial: [0, 1, 0]',
	declared: 'declared: { crown_height_mm: 38 }',
	kind: 'kind: carina',
	'languages.name': 'name: English',
	'sections.shape': 'shape: oval',
	'sections.at': 'at: 0',
	'ridges.from': 'from: 0.1',
	'pulp.height_mm': 'height_mm: 6',
	'neck.length_mm': 'length_mm: 2',
	term: 'term: Carina',
	meaning: 'meaning: A sharp cutting edge that runs along the crown.',
	...FEEDING_EXAMPLES,
	...ANIMAL_EXAMPLES,
	...REPLACEMENT_EXAMPLES,
	...QUIZ_EXAMPLES,
	jaw_place: 'jaw_place: back',
	locality: 'locality: { latitude_deg: 51.5, longitude_deg: -0.1, sensitivity: 2 }',
	place: 'place: Foreshore below the mill',
	latitude_deg: 'latitude_deg: 51.50735',
	longitude_deg: 'longitude_deg: -0.12776',
	sensitivity: 'sensitivity: 2',
	keep_days: 'keep_days: 400',
	counts: 'counts: { keep_days: 400 }',
};

/** `crown_height_mm` -> a correct line for it; keys of other files get a plain one. */
export const exampleFor = (key: string) => EXAMPLES[key] ?? `${key}: some words`;
/** Whether a key has an example of its own. */
export const hasExample = (key: string) => Object.hasOwn(EXAMPLES, key);
/** The same by path, for keys that mean one thing here and another there. */
const exampleAt = (path: string) => {
	const steps = path.replace(/\[\d+\]/g, '').split('.');
	return EXAMPLES[steps.slice(-2).join('.')] ?? exampleFor(steps[steps.length - 1]);
};
/** A correct line with the curator's own value, where there is a plain one. */
const lineFor = (key: string, value?: string) => {
	if (value === undefined) return EXAMPLES[key] ?? `${key}:`;
	const needsQuotes = /: |^[^\p{L}\p{N}]| #/u.test(value);
	return `${key}: ${needsQuotes ? quoted(short(value, 90)) : short(value, 90)}`;
};
const nameOf = (path: string) => path || 'this file';
const lastKey = (path: string) => path.replace(/\[\d+\]$/, '').replace(/^.*[.\]]/, '');

/** Units of a scan as they are said. */
const UNIT_NAMES: Readonly<Record<string, string>> = {
	um: 'micrometres',
	mm: 'millimetres',
	cm: 'centimetres',
	m: 'metres',
	in: 'inches',
};

type Found = { path: string; found: string };

export const MESSAGES = {
	// Files and folders
	'folder-unreadable': (d: { reason: string }) =>
		say(
			`The content folder could not be listed (${short(d.reason)}).`,
			'Check that the folder exists and that this computer may read it.',
		),
	'missing-file': (d: { file: string; holds: string }) =>
		say(
			`${d.file} is missing. It holds ${d.holds}.`,
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
			`There are ${d.left} more problems in this file.`,
			'Put the ones above right first; most of the others will go too.',
		),
	'unknown-file': (d: { meant?: string }) =>
		say(
			`The exhibit does not use this file.${d.meant ? ` Did you mean ${d.meant}?` : ''}`,
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
	'missing-text': (d: { file: string; of: string; language: string }) =>
		say(
			`${d.of} has no usable text in the first language (${d.language}), so it is left out of the exhibit.`,
			`Write ${d.file}; copy the same file of another one to begin with.`,
		),
	'missing-translation': (d: { file: string; language: string; shown: string }) =>
		say(
			`There is no usable ${d.language} text here; visitors who read ${d.language} see ${d.shown} instead.`,
			`Copy ${d.file} to this name and translate it.`,
		),

	// How a file is written
	'tab-indent': () =>
		say('This line begins with a tab. Lines are set in with spaces here.', 'Put two spaces for each tab.'),
	'bad-indent': () =>
		say(
			'This line, or the one above it, does not begin in the same column as the lines that it belongs with.',
			'Give lines of one level the same number of spaces, and two more for each level below.',
		),
	'unclosed-quote': (d: { quote: string }) =>
		say(
			`A quote opens here with ${d.quote} and is never closed.`,
			`Put ${d.quote} at the end of the text, for example title: ${d.quote}Sea lizard${d.quote}`,
		),
	'text-after-quote': (d: { line: string }) =>
		say(
			`There is something after the closing quote: ${short(d.line)}`,
			`Put the whole text in the other kind of quotes, for example title: '"Sea" lizard' or title: "The lizard's tooth"`,
		),
	'missing-colon': (d: { line: string; meant?: string }) =>
		say(
			`A colon is missing in "${short(d.line)}": each line has a name, a colon, a space and a value.`,
			`Write it like this: ${d.meant ?? 'title: Sea lizard'}`,
		),
	'missing-space': (d: { found: string; meant: string }) =>
		say(`A space is missing after the colon in "${short(d.found)}".`, `Write ${short(d.meant)}`),
	'colon-in-text': (d: { key: string; text: string }) =>
		say(
			'This text holds a colon with a space after it, which would begin a new value.',
			`Put the text in quotes: ${d.key}: ${quoted(short(d.text, 80))}`,
		),
	'special-sign': (d: { sign: string; line: string }) =>
		say(
			`A text cannot begin with ${d.sign} here, because that sign has a meaning of its own.`,
			`Put the text in quotes, for example ${short(d.line, 80)}`,
		),
	'unclosed-bracket': (d: { open: string; close: string }) =>
		say(
			`A bracket ${d.open} opens here, and its ${d.close} is missing or comes after a line that is not set in.`,
			d.open === '['
				? 'Close it on the same line: rooms: [compare]'
				: 'Close it on the same line: { at: 0, shape: oval }',
		),
	'extra-bracket': () =>
		say(
			'There is a closing bracket too many, or one that nothing opened.',
			'Count the brackets: each [ needs one ] and each { needs one }.',
		),
	'missing-comma': () =>
		say('Between { and } a comma is missing.', 'Put a comma after each value: { at: 0, shape: oval }'),
	'bad-backslash': () =>
		say(
			'A \\ inside double quotes has a meaning of its own.',
			`Use single quotes for this text: 'one \\ sign', or write \\\\ for one \\`,
		),
	'second-part': () =>
		say(
			'A line of three hyphens begins a second part here; only the first is used.',
			'Delete the line of hyphens.',
		),
	'list-on-line': () =>
		say(
			'A list cannot begin with a hyphen on the same line as its name.',
			'Write the list in brackets, for example sources: [leidy-1865]',
		),
	'reference-sign': (d: { sign: string }) =>
		say(
			`A value begins with ${d.sign}, which would point to another place in the file; that is not used here.`,
			`If the ${d.sign} belongs to the text, put the text in quotes: title: "${d.sign}Sea lizard"`,
		),
	'duplicate-key': (d: { key: string; firstLine: number }) =>
		say(
			`"${short(d.key)}" stands here a second time; it is already on line ${d.firstLine}.`,
			'Keep one of the two and delete the other.',
		),
	'line-not-understood': (d: { line: string }) =>
		say(
			`This line could not be understood: ${short(d.line)}`,
			'Each line has a name, a colon, a space and a value. Put a text with special signs in quotes: title: "Sea lizard"',
		),
	'hash-cuts-text': (d: { key: string; text: string }) =>
		say(
			`Everything after the # sign is taken as a note and not shown: ${short(d.text)}`,
			`If it belongs to the text, put the text in quotes: ${d.key}: ${quoted(short(d.text, 80))}`,
		),
	'too-deep': () =>
		say(
			'Values are nested too deep here.',
			'Compare the file with the same kind of file of another specimen.',
		),
	'no-top-lines': (d: { example: string }) =>
		say(
			'The file does not begin with a line of three hyphens (---).',
			`Begin the file with ---, then the short lines (${d.example}), then --- again, then the text.`,
		),
	'top-lines-not-closed': () =>
		say(
			'The second line of three hyphens (---) is missing.',
			'Put --- on a line of its own between the short lines and the text.',
		),

	// Keys
	'unknown-key': (d: { key: string; meant?: string; value?: string; known: string[] }) =>
		say(
			`"${short(d.key)}" is not known here.${d.meant ? ` Did you mean ${d.meant}?` : ''}`,
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
	'wrong-unit': (d: { key: string; meant: string; measure: string; value?: string }) =>
		say(
			`"${d.key}" is in another unit: ${d.measure}: ${d.meant}`,
			d.value === undefined ? `Write ${exampleFor(d.meant)}` : `Write ${d.meant}: ${d.value}`,
		),
	'unit-missing': (d: { key: string; meant: string; measure: string; value?: string }) =>
		say(
			`"${d.key}" does not say its unit: ${d.measure}: ${d.meant}`,
			d.value === undefined
				? `Write ${exampleFor(d.meant)}`
				: `Write ${d.meant}: ${d.value}, if that is its unit`,
		),
	'missing-key': (d: { path: string; key: string }) =>
		say(`${d.key} is missing.`, `Add a line such as ${exampleAt(d.path)}`),

	// Values
	'empty-value': (d: { path: string }) =>
		say(`${nameOf(d.path)} has no value.`, `Write one, for example ${exampleAt(d.path)}`),
	'decimal-comma': (d: Found & { meant: string }) =>
		say(
			`"${d.found}" has a decimal comma; numbers have a decimal point here.`,
			`Write ${lastKey(d.path)}: ${d.meant}`,
		),
	'number-with-unit': (d: Found & { meant?: string; unit?: string }) =>
		say(
			`"${short(d.found)}" has a unit in it; the value is a number alone${d.unit ? `, and ${d.unit} is in its name` : ''}.`,
			d.meant ? `Write ${lastKey(d.path)}: ${d.meant}` : `Write ${exampleAt(d.path)}`,
		),
	'number-in-quotes': (d: Found) =>
		say(
			`"${d.found}" is in quotes, which makes it a text; a number is expected.`,
			`Write ${lastKey(d.path)}: ${d.found.trim()}`,
		),
	'not-a-number': (d: Found) =>
		say(`A number is expected here, but "${short(d.found)}" was found.`, `Write ${exampleAt(d.path)}`),
	'not-whole': (d: Found & { meant: string }) =>
		say(`A whole number is expected here, but ${d.found} was found.`, `Write ${lastKey(d.path)}: ${d.meant}`),
	'out-of-range': (d: Found & { min?: number; max?: number }) => {
		const name = lastKey(d.path);
		const least = d.min === undefined ? '' : atLeast(d.min);
		const most = d.max === undefined ? '' : atMost(d.max);
		const range = least && most ? `from ${least} to ${most}` : most ? `at most ${most}` : `at least ${least}`;
		const near = least && (Number(d.found) < Number(least) || !most) ? least : most;
		const found = Number.isFinite(Number(d.found)) ? number(Number(d.found)) : d.found;
		return say(
			`${name} is ${found}; it can be ${range}.`,
			`Check the number and its unit; the nearest possible is ${name}: ${near}`,
		);
	},
	'not-a-point': (d: Found) =>
		say(
			`${lastKey(d.path)} is three numbers in brackets, but ${short(d.found)} was found.`,
			`Write ${exampleAt(d.path)}, with decimal points`,
		),
	'marks-coincide': (d: { first: string; second: string }) =>
		say(
			`The ${d.first} and the ${d.second} of the crown are marked at the same place.`,
			'Mark each at its own place: the apex is the tip, the base points are the front and the back of the crown’s base.',
		),
	'no-direction': () =>
		say(
			'labial is a direction, and three zeros point nowhere.',
			`Write which way the lip side looks in the scan, for example ${exampleFor('labial')}, or delete the line.`,
		),
	'not-yes-no': (d: Found & { meant?: boolean }) =>
		say(
			`true or false is expected here, but "${short(d.found)}" was found.`,
			d.meant === undefined ? `Write ${exampleAt(d.path)}` : `Write ${lastKey(d.path)}: ${d.meant}`,
		),
	'text-needs-quotes': (d: Found) =>
		say(
			`A text is expected here, but ${short(d.found)} is taken as a number or as true or false.`,
			`Put it in quotes: ${lastKey(d.path)}: "${short(d.found)}"`,
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
			`"${short(d.found)}" is not possible for ${lastKey(d.path)}: it is ${list(d.choices)}.`,
			d.meant ? `Did you mean ${lastKey(d.path)}: ${d.meant}?` : `Write ${exampleAt(d.path)}`,
		),
	'not-a-side': (d: Found & { meant?: string }) =>
		say(
			`"${short(d.found)}" is not a side of a tooth: it is mesial, distal, labial or lingual, or degrees (0 distal, 90 labial, 180 mesial, 270 lingual).`,
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

	// One file and another
	'unknown-group': (d: { found: string; meant?: string }) =>
		say(
			`There is no group "${short(d.found)}": groups/${short(d.found)}.yaml does not exist.${d.meant ? ` Did you mean ${d.meant}?` : ''}`,
			d.meant ? `Write group: ${d.meant}` : 'Write the id of a file in groups/, or make that file.',
		),
	'group-left-out': (d: { found: string }) =>
		say(
			`The group "${d.found}" has problems of its own and is left out, so this specimen is left out too.`,
			`Put right the problems listed for groups/${d.found}.`,
		),
	'unknown-bed': (d: { found: string; meant?: string }) =>
		say(
			`There is no bed "${short(d.found)}": beds/${short(d.found)}.yaml does not exist.${d.meant ? ` Did you mean ${d.meant}?` : ''}`,
			d.meant ? `Write bed: ${d.meant}` : 'Write the id of a file in beds/, or make that file.',
		),
	'bed-left-out': (d: { found: string }) =>
		say(
			`The bed "${d.found}" has problems of its own and is left out, so this specimen is left out too.`,
			`Put right the problems listed for beds/${d.found}.`,
		),
	'unknown-source': (d: { found: string; meant?: string }) =>
		say(
			`There is no source "${short(d.found)}" in sources.yaml.${d.meant ? ` Did you mean ${d.meant}?` : ''}`,
			d.meant ? `Write ${d.meant}` : `Add it to sources.yaml, or write an id that stands there.`,
		),
	'source-left-out': (d: { found: string }) =>
		say(
			`The source "${short(d.found)}" cannot be shown, because sources.yaml has problems of its own.`,
			'Put right the problems listed for sources.yaml.',
		),
	'duplicate-accession': (d: { found: string; file: string }) =>
		say(
			`The accession number ${d.found} already belongs to ${d.file}, so this specimen is left out.`,
			'Give one of the two its own number, for example accession: SKM 0105',
		),
	'duplicate-id': (d: { found: string; firstLine: number }) =>
		say(
			`"${d.found}" stands here a second time; it is already on line ${d.firstLine}.`,
			`Give each its own, for example ${d.found}-2, or delete one of them.`,
		),
	'bed-for-living': (d: { group: string }) =>
		say(`${d.group} lives today, so its teeth have no bed.`, 'Delete the line that begins with bed:'),
	'bed-missing': (d: { group: string }) =>
		say(
			`${d.group} is extinct, but no bed is given; the screen will not say how old this is.`,
			'Add a line such as bed: upper-marl',
		),
	'missing-scan': (d: { found: string; folder: string; meant?: string }) =>
		say(
			`The scan ${short(d.found)} is not in ${d.folder}.${d.meant ? ` Did you mean ${d.meant}?` : ''}`,
			d.meant ? `Write file: ${d.meant}` : `Put the scan into ${d.folder}, or correct its name.`,
		),
	'scan-ending': (d: { found: string; example: string }) =>
		say(
			`"${short(d.found)}" is not a kind of scan that can be read: its name ends in .glb, .stl, .ply or .obj.`,
			`Save the scan as one of these, for example file: ${d.example}`,
		),
	'scan-not-in-folder': (d: { found: string; name: string }) =>
		say(
			`"${short(d.found)}" is not a plain file name; the scan lies beside specimen.yaml.`,
			`Copy the scan into the specimen's folder and write file: ${d.name}`,
		),
	'empty-scan': (d: { found: string }) =>
		say(`The scan ${d.found} has no bytes in it.`, 'Copy it again from where it was made.'),
	'shape-missing': () =>
		say(
			'The shape is neither a model nor a scan; one of them is needed.',
			'Add under shape: either model: with its numbers, or scan: { file: scan.stl, units: mm }',
		),
	'shape-both': () =>
		say(
			'The shape has both a model and a scan; only one can be shown.',
			'Delete one of the two, or put a # before each of its lines.',
		),
	'feature-without-name': (d: { id: string; shown: string }) =>
		say(
			`The feature "${d.id}" of specimen.yaml has no name here, so it is not marked on the tooth.`,
			`Add under features: ${d.id}: ${d.shown}`,
		),
	'feature-not-translated': (d: { id: string; shown: string; language: string }) =>
		say(
			`The feature "${d.id}" has no name here; visitors see it in ${d.language}.`,
			`Add its translation under features: ${d.id}: ${d.shown}`,
		),
	'name-without-feature': (d: { id: string; meant?: string }) =>
		say(
			`specimen.yaml marks no feature "${short(d.id)}", so this name is not shown.${d.meant ? ` Did you mean ${d.meant}?` : ''}`,
			d.meant
				? `Write ${d.meant} in place of ${short(d.id)}.`
				: `Delete the line, or add to specimen.yaml: - { id: ${short(d.id)}, at: 0.6, where: distal }`,
		),

	// Words for visitors
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
	'bad-message': (d: { found: string; why: string }) =>
		say(
			`This text cannot be filled in: ${d.why}.`,
			`Write each filler in its own pair of braces, for example "{count} teeth". Found: ${short(d.found, 80)}`,
		),
	'placeholder-mismatch': (d: { missing: string[]; extra: string[]; language: string }) =>
		say(
			`The fillers in braces are not those of the ${d.language} text:${d.missing.length ? ` ${d.missing.join(', ')} is missing` : ''}${d.missing.length && d.extra.length ? ';' : ''}${d.extra.length ? ` ${d.extra.join(', ')} is not known there` : ''}. The ${d.language} text is shown instead.`,
			d.missing.length
				? `Keep ${d.missing.join(' and ')} exactly as in the ${d.language} text.`
				: `Take out ${d.extra.join(' and ')}.`,
		),
	'text-not-translated': (d: { key: string; language: string; shown: string }) =>
		say(
			`"${d.key}" is not translated; visitors see the ${d.language} text.`,
			`Add a line ${d.key}: with the translation of "${short(d.shown)}"`,
		),
	'text-not-used': (d: { key: string; meant?: string; file: string }) =>
		say(
			`"${short(d.key)}" does not stand in ${d.file}, so it is not shown.${d.meant ? ` Did you mean ${d.meant}?` : ''}`,
			d.meant
				? `Write ${d.meant} in place of ${short(d.key)}.`
				: `Delete the line, or add it to ${d.file} first.`,
		),

	// Scans that were measured
	'scan-unit': (d: { key: string; says: number; is: number; units: string; meant: string }) =>
		say(
			`The card says ${d.key}: ${number(d.says)}, but read in ${UNIT_NAMES[d.units]} the scan measures ${number(d.is)} mm: the file's numbers look like ${UNIT_NAMES[d.meant]}.`,
			`Write units: ${d.meant}`,
		),
	'unlike-the-card': (d: { key: string; says: number; is: number }) =>
		say(
			`The card says ${d.key}: ${number(d.says)}, but the shape measures ${number(d.is)} mm.`,
			'Measure the tooth again, and check that the number, the scan and its marks belong to the same tooth.',
		),
	'unlikely-size': (d: { height_mm: number; units: string }) =>
		say(
			`Read in ${UNIT_NAMES[d.units]}, this crown is ${number(d.height_mm)} mm high, which is unlikely for a tooth.`,
			'Ask whoever made the scan for the unit of its numbers: units: mm, cm, m, um or in.',
		),
	'crown-base-not-marked': () =>
		say(
			'Nothing tells where the crown ends and the root begins, so the whole piece was measured as a crown.',
			`Mark the tip and the base at the desk, or write under scan: ${exampleFor('crown')}`,
		),
	/** `why` is the measuring's own sentence */
	'not-one-tooth': (d: { why: string }) =>
		say(
			d.why,
			'Cut one tooth out of it in the program that made the scan, or mark its crown: the marks are believed.',
		),
	'several-pieces': () =>
		say(
			'The scan has several separate pieces; all were measured together.',
			'Delete what is not the tooth (stand, clay, loose bits) in the program that made the scan.',
		),
	'colour-unreadable': (d: { why: string }) =>
		say(
			`${d.why} The tooth is shown in the colour of its preservation.`,
			'Save the scan again as GLB with its picture inside, as JPEG or PNG of at most 8192 x 8192 pixels; or write under scan: colour: plain',
		),
	'coarse-mesh': () =>
		say(
			'The scan has so few triangles that its measures are rough.',
			'Save it again with more: 40,000 triangles show a whole tooth well.',
		),
	'mark-off-surface': (d: { mark: string; gap_mm: number }) =>
		say(
			`The ${d.mark} of the crown is marked ${number(d.gap_mm)} mm away from the surface of the scan.`,
			"Mark it again at the desk. By hand: marks are millimetres in the scan's own frame, whatever its units.",
		),

	// The animal behind a tooth
	...ANIMAL_MESSAGES,
	...REPLACEMENT_MESSAGES,
	...QUIZ_MESSAGES,

	// Feeding
	...FEEDING_MESSAGES,

	// Shapes that cannot be made
	'tip-too-blunt': (d: { found?: number; max?: number }) =>
		say(
			`A tip radius of ${d.found === undefined ? 'this size' : number(d.found)} mm does not fit on this crown${d.max === undefined ? '' : `; ${atMost(d.max)} mm is the most`}.`,
			`Make it smaller, for example tip_radius_mm: ${d.max === undefined ? 0.5 : atMost(d.max)}`,
		),
	'no-crown-left': () =>
		say(
			'The wear given here takes the whole crown away.',
			'Check the numbers under wear: a smaller depth_mm, or a greater tip_worn_to_mm (the height that is left).',
		),
	'serration-too-fine': (d: { found?: number; max?: number }) =>
		say(
			`Serrations of ${d.found === undefined ? 'this number' : number(d.found)} per 5 mm are finer than the model can show${d.max === undefined ? '' : `; ${atMost(d.max)} is the most on this tooth`}.`,
			`Write ${d.max === undefined ? 'a smaller number' : `serrations_per_5mm: ${atMost(d.max)}`}, and give the true number in the label.`,
		),
	'ridge-too-tall': (d: { path: string; found?: number; max?: number }) =>
		say(
			`${lastKey(d.path)} is ${d.found === undefined ? 'too great' : number(d.found)}: ridges or edges would run into each other${d.max === undefined ? '' : `; ${atMost(d.max)} is the most here`}.`,
			`Make it smaller, for example ${d.max === undefined ? exampleAt(d.path) : `${lastKey(d.path)}: ${atMost(d.max)}`}`,
		),
	'pulp-breaks-out': (d: { found?: number; max?: number }) =>
		say(
			'The pulp cavity would come through the wall of the tooth.',
			`Make the cavity lower or narrower${d.max === undefined ? ', for example pulp: { height_mm: 6, opening: 0.5 }' : `: ${atMost(d.max)} is the most here`}`,
		),
	'sections-empty': () =>
		say(
			'The list of sections is empty; the crown needs one at least.',
			'Write sections: [{ at: 0, shape: oval }]',
		),
	'shape-not-closed': () =>
		say(
			'The numbers of the model do not give a closed tooth.',
			'Take out carinae, ridges, wear and pulp, then put them back one by one to find the one that does not fit.',
		),
} as const;

export type MessageId = keyof typeof MESSAGES;
export type MessageData<K extends MessageId> = Parameters<(typeof MESSAGES)[K]> extends [infer D] ? D : null;

/** Problems that are worth knowing but leave nothing out. */
export const WARNINGS: ReadonlySet<MessageId> = new Set<MessageId>([
	'unknown-file',
	'language-not-shown',
	'missing-translation',
	'hash-cuts-text',
	'idle-too-short',
	'warning-too-short',
	'unlike-the-card',
	'unlikely-size',
	'crown-base-not-marked',
	'not-one-tooth',
	'several-pieces',
	'colour-unreadable',
	'coarse-mesh',
	'mark-off-surface',
	'source-left-out',
	'bed-missing',
	'feature-not-translated',
	'name-without-feature',
	'alt-missing',
	'alt-repeats-title',
	'long-sentence',
	'long-label',
	'long-line',
	'hard-to-read',
	'too-certain',
	'number-not-marked',
	'picture-left-out',
	'code-shown-as-text',
	'text-not-shown',
	'text-not-translated',
	'text-not-used',
]);
