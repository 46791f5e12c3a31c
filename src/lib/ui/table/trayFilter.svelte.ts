import { FACETS, type FacetId } from './trayFacets';

/** What is wanted of the teeth in the drawer; stays while other things lie on the shelf. */
export class TrayFilter {
	wanted = $state<Record<FacetId, string[]>>({ animal: [], feeding: [], found: [], part: [] });

	get active(): FacetId[] {
		return FACETS.filter((facet) => this.wanted[facet].length > 0);
	}

	toggle(facet: FacetId, value: string): void {
		const now = this.wanted[facet];
		this.wanted[facet] = now.includes(value) ? now.filter((other) => other !== value) : [...now, value];
	}

	/** Clears one facet, or all. */
	clear(facet?: FacetId): void {
		for (const one of facet ? [facet] : FACETS) this.wanted[one] = [];
	}
}
