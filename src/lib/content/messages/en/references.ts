import { say, short, type Tongue } from '../parts';
import { didYouMean, tongue } from './voice';

/** One file and another. */
export const REFERENCES = {
	'unknown-group': (d: { found: string; meant?: string }) =>
		say(
			`There is no group "${short(d.found)}": groups/${short(d.found)}.yaml does not exist.${didYouMean(d.meant)}`,
			d.meant ? `Write group: ${d.meant}` : 'Write the id of a file in groups/, or make that file.',
		),
	'group-left-out': (d: { found: string }) =>
		say(
			`The group "${d.found}" has problems of its own and is left out, so this specimen is left out too.`,
			`Put right the problems listed for groups/${d.found}.`,
		),
	'unknown-bed': (d: { found: string; meant?: string }) =>
		say(
			`There is no bed "${short(d.found)}": beds/${short(d.found)}.yaml does not exist.${didYouMean(d.meant)}`,
			d.meant ? `Write bed: ${d.meant}` : 'Write the id of a file in beds/, or make that file.',
		),
	'bed-left-out': (d: { found: string }) =>
		say(
			`The bed "${d.found}" has problems of its own and is left out, so this specimen is left out too.`,
			`Put right the problems listed for beds/${d.found}.`,
		),
	'unknown-source': (d: { found: string; meant?: string }) =>
		say(
			`There is no source "${short(d.found)}" in sources.yaml.${didYouMean(d.meant)}`,
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
			`The scan ${short(d.found)} is not in ${d.folder}.${didYouMean(d.meant)}`,
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
	'feature-not-translated': (d: { id: string; shown: string; language: Tongue }) =>
		say(
			`The feature "${d.id}" has no name here; visitors see it in ${tongue(d.language)}.`,
			`Add its translation under features: ${d.id}: ${d.shown}`,
		),
	'name-without-feature': (d: { id: string; meant?: string }) =>
		say(
			`specimen.yaml marks no feature "${short(d.id)}", so this name is not shown.${didYouMean(d.meant)}`,
			d.meant
				? `Write ${d.meant} in place of ${short(d.id)}.`
				: `Delete the line, or add to specimen.yaml: - { id: ${short(d.id)}, at: 0.6, where: distal }`,
		),
} as const;
