import type { FeedingLoss } from '../codes';
import { say, short, type Tongue } from '../parts';
import { tongue } from './voice';

/** What cannot be shown without a file. */
const LOSSES: Readonly<Record<FeedingLoss, string>> = {
	room: 'the feeding room is not shown',
	prey: 'no prey is shown',
	guilds: 'no guild is named',
	ridges: 'nothing is said about ridges',
	everyday: 'forces are not compared with everyday things',
};

/** The folder `feeding/`. */
export const FEEDING = {
	'number-not-marked': (d: { source: string }) =>
		say(
			`This number rests on "${d.source}", which is only recalled; the screen marks it.`,
			'Write tag: memory beside it, or look the number up and give its source.',
		),
	'low-high-swapped': (d: { low: number; high: number; value: number }) =>
		say(
			`low, value and high do not rise: ${d.low}, ${d.value}, ${d.high}.`,
			'Write the smallest under low, the largest under high, and the value between them.',
		),
	'band-swapped': (d: { from: number; to: number }) =>
		say(
			`The band goes from ${d.from} to ${d.to}, so nothing lies in it.`,
			`Swap them: { from: ${d.to}, to: ${d.from} }`,
		),
	'unknown-guild': (d: { found: string; meant?: string; known: string[] }) =>
		say(
			`There is no guild "${short(d.found)}". The published ones are ${d.known.join(', ')}.`,
			d.meant ? `Write ${d.meant}: in place of ${short(d.found)}:` : 'Delete it, or use one of these names.',
		),
	'unknown-material': (d: { found: string; meant?: string }) =>
		say(
			`There is no usable material "${short(d.found)}" in feeding/materials.yaml, so this prey is left out.`,
			d.meant ? `Write material: ${d.meant}` : 'Add it to materials.yaml, or write an id that stands there.',
		),
	'elastic-half': () =>
		say(
			'stiffness_gpa and poisson belong together; one of them is missing.',
			'Give both, or delete the one that is there.',
		),
	'jaw-stops': () =>
		say(
			'The stops of a jaw rise from at: 0 (front) to at: 1 (back); these do not.',
			'Write two stops at least, in order: the first at: 0, the last at: 1.',
		),
	'feeding-part-missing': (d: { file: string; without: FeedingLoss }) =>
		say(
			`${d.file} is missing or cannot be used, so ${LOSSES[d.without]}.`,
			`Make the file, or copy ${d.file} from the demo exhibit.`,
		),
	'feeding-words-missing': (d: { key: string; file: string; language: Tongue }) =>
		say(
			`"${d.key}" has no usable words in the first language (${tongue(d.language)}), so it is left out.`,
			`Add them to ${d.file}; copy those of another one to begin with.`,
		),
	'everyday-count': (d: { found: string }) =>
		say(
			`This text must hold {count} and no other filler: ${short(d.found)}`,
			'Write it like this: "{count, plural, one {# apple} other {# apples}}"',
		),
} as const;
