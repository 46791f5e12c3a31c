import { quoted, say, short } from '../parts';

/** How a file is written: YAML, and the lines of hyphens round the short lines of a text. */
export const WRITING = {
	'tab-indent': () =>
		say('This line begins with a tab. Lines are set in with spaces here.', 'Put two spaces for each tab.'),
	'odd-space': () =>
		say(
			'This line holds a no-break space: it looks like a space, but is none to the program that reads the file.',
			'Delete the space there and type it again; text copied from a web page or a word processor brings such spaces.',
		),
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
} as const;
