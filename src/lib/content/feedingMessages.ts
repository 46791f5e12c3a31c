/** What a curator reads about the folder `feeding/`. */

const say = (message: string, remedy: string) => ({ message, remedy });
const short = (text: string) => (text.length > 60 ? `${text.slice(0, 59)}…` : text);

export const FEEDING_EXAMPLES: Readonly<Record<string, string>> = {
	value: 'value: 12',
	low: 'low: 10',
	high: 'high: 30',
	resists_mpa: 'resists_mpa: { value: 67, source: chen-2014 }',
	strength_mpa: 'strength_mpa: { value: 338, source: freeman-lemen-2007 }',
	stiffness_gpa: 'stiffness_gpa: { value: 20, source: rhee }',
	poisson: 'poisson: { value: 0.3, source: recalled, tag: memory }',
	enamel_stiffness_gpa: 'enamel_stiffness_gpa: { value: 80, source: recalled, tag: memory }',
	enamel_poisson: 'enamel_poisson: { value: 0.3, source: recalled, tag: memory }',
	enamel_toughness: 'enamel_toughness: { value: 0.84, source: xu-1998 }',
	basis: 'basis: strength',
	gives: 'gives: cracks',
	edges: 'edges: 0.3',
	edges_source: 'edges_source: freeman-lemen-2006',
	borrowed: 'borrowed: true',
	outline: 'outline: fish',
	layers: 'layers: [{ material: skin, thickness_mm: { value: 2, source: skerrow-feeding } }]',
	material: 'material: skin',
	thickness_mm: 'thickness_mm: { value: 2, source: skerrow-feeding }',
	radius_mm: 'radius_mm: { value: 25, source: skerrow-feeding }',
	shell:
		'shell: { radius_mm: { value: 25, source: skerrow-feeding }, strength_mpa: { value: 60, source: currey-taylor-1974 } }',
	length_mm: 'length_mm: { value: 300, source: skerrow-feeding }',
	'neck.length_mm': 'length_mm: 2',
	'root.length_mm': 'length_mm: 7',
	bands: 'bands: { slenderness: { from: 1.2, to: 2 } }',
	slenderness: 'slenderness: 1.9',
	tip: 'tip: 0.18',
	roundness: 'roundness: 0.85',
	lens: 'lens: 0.5',
	fullness: 'fullness: 0.5',
	curve_deg: 'curve_deg: 12',
	corner: 'corner: crush',
	teeth: 'teeth: 18',
	stops: 'stops: [{ id: front, at: 0, crown_height_mm: 30, slenderness: 2.4 }]',
	verdict: 'verdict: open',
	sources_for: 'sources_for: [mccurry-2019]',
	sources_against: 'sources_against: [mackenzie-2024]',
	mass_kg: 'mass_kg: { value: 0.1, source: skerrow-feeding }',
	pull: 'pull: 1.5',
	middle: 'middle: 1.9',
	middle_deg: 'middle_deg: 12',
	step_deg: 'step_deg: 30',
	full_share: 'full_share: 0.15',
	serrated: 'serrated: 0.25',
	edged_share: 'edged_share: 0.7',
	side_pull_deg: 'side_pull_deg: 30',
	prey_over_tooth: 'prey_over_tooth: { from: 5, to: 40 }',
	does: 'does: Holds slippery fish',
	form: 'form: A stout cone with a blunt tip',
	food: 'food: Fish with thick scales',
	examples: 'examples: Sea crocodiles with blunt teeth',
	lesson: 'lesson: Try a dome, then a needle.',
	for: 'for: Ridges may grip.',
	against: 'against: Nobody has tested it yet.',
};

export const FEEDING_MESSAGES = {
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
	'feeding-part-missing': (d: { file: string; without: string }) =>
		say(
			`${d.file} is missing or cannot be used, so ${d.without}.`,
			`Make the file, or copy ${d.file} from the demo exhibit.`,
		),
	'feeding-words-missing': (d: { key: string; file: string; language: string }) =>
		say(
			`"${d.key}" has no usable words in the first language (${d.language}), so it is left out.`,
			`Add them to ${d.file}; copy those of another one to begin with.`,
		),
	'everyday-count': (d: { found: string }) =>
		say(
			`This text must hold {count} and no other filler: ${short(d.found)}`,
			'Write it like this: "{count, plural, one {# apple} other {# apples}}"',
		),
} as const;
