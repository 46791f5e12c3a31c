import { agesAt } from '../../domain/time/agesAt';
import type { StageId } from '../../domain/time/stages';

/** Names of the chart's ranks: era, period, epoch, age; '' where the chart of this exhibit is no finer. */
type Ranks = readonly [era: string, period: string, epoch: string, age: string];

const late = (age: string): Ranks => ['Mesozoic', 'Cretaceous', 'Late Cretaceous', age];

/** Source: International Chronostratigraphic Chart, as named in domain/time/stages.ts. */
const RANKS: Readonly<Record<StageId, Ranks>> = {
	triassic: ['Mesozoic', 'Triassic', '', ''],
	jurassic: ['Mesozoic', 'Jurassic', '', ''],
	'early-cretaceous': ['Mesozoic', 'Cretaceous', 'Early Cretaceous', ''],
	cenomanian: late('Cenomanian'),
	turonian: late('Turonian'),
	coniacian: late('Coniacian'),
	santonian: late('Santonian'),
	campanian: late('Campanian'),
	maastrichtian: late('Maastrichtian'),
	paleocene: ['Cenozoic', 'Paleogene', 'Paleocene', ''],
	eocene: ['Cenozoic', 'Paleogene', 'Eocene', ''],
	oligocene: ['Cenozoic', 'Paleogene', 'Oligocene', ''],
	miocene: ['Cenozoic', 'Neogene', 'Miocene', ''],
	pliocene: ['Cenozoic', 'Neogene', 'Pliocene', ''],
	pleistocene: ['Cenozoic', 'Quaternary', 'Pleistocene', ''],
	holocene: ['Cenozoic', 'Quaternary', 'Holocene', ''],
};

const TERMS = [
	['earliestEraOrLowestErathem', 'latestEraOrHighestErathem'],
	['earliestPeriodOrLowestSystem', 'latestPeriodOrHighestSystem'],
	['earliestEpochOrLowestSeries', 'latestEpochOrHighestSeries'],
	['earliestAgeOrLowestStage', 'latestAgeOrHighestStage'],
] as const;

export type GeologicalTerm = (typeof TERMS)[number][number] | 'bed';

/**
 * Darwin Core's geological context of a bed: the oldest and youngest named unit of each rank that its span of time
 * reaches into, ages in millions of years. Empty for a living animal and for what is older than the chart.
 */
export function geologicalContext(
	bed: { oldest_Ma: number; youngest_Ma: number; name: string } | undefined,
): Record<GeologicalTerm, string> {
	const ages = bed && bed.oldest_Ma > 0 ? agesAt(bed.oldest_Ma, bed.youngest_Ma) : [];
	const first = ages.length > 0 ? RANKS[ages[0].id] : undefined;
	const last = ages.length > 0 ? RANKS[ages[ages.length - 1].id] : undefined;
	const pairs = TERMS.flatMap(([earliest, latest], rank) => [
		[earliest, first?.[rank] ?? ''],
		[latest, last?.[rank] ?? ''],
	]);
	return { ...Object.fromEntries(pairs), bed: bed?.name ?? '' } as Record<GeologicalTerm, string>;
}
