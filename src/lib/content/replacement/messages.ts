/** What a curator reads about the files of content/replacement/. */

const say = (message: string, remedy: string) => ({ message, remedy });
const plain = (value: number) => String(Number(value.toPrecision(4)));
const list = (words: readonly string[]) => words.join(', ');

export const REPLACEMENT_EXAMPLES: Readonly<Record<string, string>> = {
	period_d: 'period_d: { from: 109, to: 120, source: erickson-1992 }',
	'period_d.from': 'from: 109',
	'period_d.to': 'to: 120',
	last_period_d: 'last_period_d: { from: 730, source: skerrow-assumption }',
	age: 'age: { kind: in-use, days: { from: 511, source: chinsamy-2012 } }',
	days: 'days: { from: 511, source: chinsamy-2012 }',
	line_um: 'line_um: { from: 4, to: 16, source: erickson-1992 }',
	positions: 'positions: { from: 64, to: 68, source: recalled }',
	successors: 'successors: { from: 5, source: maho-reisz-2024 }',
	'age.kind': 'kind: in-use',
	spacing: 'spacing: 2.5',
	spacings: 'spacings: [1, 1, 2, 2, 2, 1]',
	spacing_source: 'spacing_source: { from: 2, source: sattler-schwarz-2019 }',
	in_use: 'in_use: { from: 511, source: chinsamy-2012 }',
	successor: 'successor: { from: 233, source: chinsamy-2012 }',
	seed: 'seed: 12',
	edge_loss: 'edge_loss: { from: 0.36, source: kosch-zanno-2020 }',
	years: 'years: { from: 35, source: skerrow-assumption }',
	tooth_mm3: 'tooth_mm3: { from: 500, source: skerrow-assumption }',
	answer: 'answer: shed',
	base: 'base: bays',
	tip: 'tip: worn',
	closing_deg: 'closing_deg: 20',
	spacing_mm: 'spacing_mm: 14',
	stump_share: 'stump_share: 0.5',
	line: 'line: A new tooth every two months',
	more: 'more: Counted in one jaw only.',
};

export const REPLACEMENT_MESSAGES = {
	'range-swapped': (d: { path: string; from: number; to: number }) =>
		say(
			`${d.path} goes from ${plain(d.from)} down to ${plain(d.to)}.`,
			`Swap them: from: ${plain(d.to)}, to: ${plain(d.from)}`,
		),
	'fixed-name': (d: { found: string; names: readonly string[] }) =>
		say(
			`"${d.found}" is not one of the names that this file may use: ${list(d.names)}.`,
			'Use one of those names, each once.',
		),
	'spacing-missing': () =>
		say(
			'A jaw needs spacing (one number) or spacings (a list), one of the two.',
			`Write ${REPLACEMENT_EXAMPLES.spacing}`,
		),
	'spacings-count': (d: { found: number; needed: number }) =>
		say(
			`spacings has ${d.found} numbers; a jaw needs one for each step between two positions, here ${d.needed}.`,
			`Write ${d.needed} numbers, or spacing: 2 for the whole jaw.`,
		),
	'successor-older': (d: { inUse: number; successor: number }) =>
		say(
			`The successor (${plain(d.successor)} lines) is not younger than the tooth in use (${plain(d.inUse)} lines).`,
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
