import type { SpecimenView } from '../../content/view';
import type { FacetId } from './trayFacets';

/** where found: a living animal comes from no bed */
export const LIVING = 'living';

/** What a tooth in the drawer can be found by; `uses` says by id what its shape is good for. */
export function trayValues(
	{ id, group, bed, part }: SpecimenView,
	uses: Readonly<Record<string, string>>,
): Record<FacetId, string | null> {
	const found = bed?.id ?? (group.living ? LIVING : null);
	return { animal: group.id, feeding: uses[id] ?? null, found, part };
}
