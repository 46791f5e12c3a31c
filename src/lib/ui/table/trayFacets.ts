import type { SpecimenView } from '../../content/view';

/** What the teeth in the drawer can be sorted by. */
export const FACETS = ['animal', 'feeding', 'found', 'part'] as const;
export type FacetId = (typeof FACETS)[number];

/** Values wanted of each facet: any of those; none chosen = all. */
export type Wanted = Readonly<Record<FacetId, readonly string[]>>;

export interface FacetOption {
	value: string;
	/** teeth that would be left if this were the only value wanted of its facet, the other facets as they are */
	count: number;
}

/** A tooth's value of each facet; null where it has none. */
export type ValuesOf = (specimen: SpecimenView) => Readonly<Record<FacetId, string | null>>;

const fits = (values: Readonly<Record<FacetId, string | null>>, wanted: Wanted, but?: FacetId): boolean =>
	FACETS.every((facet) => {
		if (facet === but || wanted[facet].length === 0) return true;
		const value = values[facet];
		return value !== null && wanted[facet].includes(value);
	});

/**
 * The teeth that are like what is wanted, in the drawer's order, and the options of each facet with their counts, in
 * the order in which the drawer first has them.
 */
export function trayFacets(
	specimens: readonly SpecimenView[],
	wanted: Wanted,
	valuesOf: ValuesOf,
): { shown: SpecimenView[]; options: Record<FacetId, FacetOption[]> } {
	const rows = specimens.map((specimen) => ({ specimen, values: valuesOf(specimen) }));
	const shown = rows.filter(({ values }) => fits(values, wanted)).map(({ specimen }) => specimen);
	const optionsOf = (facet: FacetId): FacetOption[] => {
		const counts = new Map<string, number>();
		for (const { values } of rows) {
			const value = values[facet];
			if (value === null) continue;
			counts.set(value, (counts.get(value) ?? 0) + (fits(values, wanted, facet) ? 1 : 0));
		}
		// a value that has left the exhibit can still be unchosen
		for (const value of wanted[facet]) if (!counts.has(value)) counts.set(value, 0);
		return [...counts].map(([value, count]) => ({ value, count }));
	};
	return {
		shown,
		options: Object.fromEntries(FACETS.map((facet) => [facet, optionsOf(facet)])) as Record<
			FacetId,
			FacetOption[]
		>,
	};
}
