/**
 * Named ages of the rocks, Triassic to Holocene: fine where the teeth of this exhibit come from (Late Cretaceous
 * stages, then epochs), coarse before that (Early Cretaceous, Jurassic, Triassic).
 *
 * Numbers: International Commission on Stratigraphy, International Chronostratigraphic Chart, edition 2026-06,
 * read in the commission's own data for the chart (repository i-c-stratigraphy/chart, file source/chart-nolabels.ttl,
 * owl:versionInfo "2026-06"; CC BY 4.0). To be cited as: Cohen, K., Harper, D., Gibbard, P. & Car, N. 2025. The ICS
 * International Chronostratigraphic Chart this decade. Episodes 48: 105-115, doi:10.18814/epiiugs/2025/025001.
 * The data give the base of the Miocene as 23.04 (epoch and period, and the end of the Oligocene) but that of its
 * first age as 23.03; the epoch's number is used. Ages of boundaries are revised from edition to edition.
 */
export const CHART_EDITION = '2026-06';

export const STAGE_IDS = [
	'triassic',
	'jurassic',
	'early-cretaceous',
	'cenomanian',
	'turonian',
	'coniacian',
	'santonian',
	'campanian',
	'maastrichtian',
	'paleocene',
	'eocene',
	'oligocene',
	'miocene',
	'pliocene',
	'pleistocene',
	'holocene',
] as const;
export type StageId = (typeof STAGE_IDS)[number];

export interface Stage {
	id: StageId;
	/** rank in the chart */
	rank: 'age' | 'epoch' | 'period';
	/** millions of years ago */
	base_Ma: number;
	/** margin of error of the base as the chart prints it, million years; null where it prints none */
	baseError_Ma: number | null;
	/** base of the next one, 0 for today */
	top_Ma: number;
}

type Row = [StageId, Stage['rank'], base_Ma: number, baseError_Ma: number | null];

/** Oldest first; each ends where the next begins. Source: the chart named above. */
const ROWS: Row[] = [
	['triassic', 'period', 251.902, 0.024],
	['jurassic', 'period', 201.4, 0.2],
	['early-cretaceous', 'epoch', 143.1, 0.6],
	['cenomanian', 'age', 100.5, 0.1],
	['turonian', 'age', 93.9, 0.2],
	['coniacian', 'age', 89.8, 0.3],
	['santonian', 'age', 85.7, 0.2],
	['campanian', 'age', 83.6, 0.2],
	['maastrichtian', 'age', 72.2, 0.2],
	['paleocene', 'epoch', 66.0, null],
	['eocene', 'epoch', 56.0, null],
	['oligocene', 'epoch', 33.9, null],
	['miocene', 'epoch', 23.04, null],
	['pliocene', 'epoch', 5.333, null],
	['pleistocene', 'epoch', 2.58, null],
	['holocene', 'epoch', 0.0117, null],
];

export const STAGES: readonly Stage[] = ROWS.map(([id, rank, base_Ma, baseError_Ma], i) => ({
	id,
	rank,
	base_Ma,
	baseError_Ma,
	top_Ma: ROWS[i + 1]?.[2] ?? 0,
}));

/** Base of the oldest division here, millions of years ago. */
export const CHART_OLDEST_MA = STAGES[0].base_Ma;
