import type { SpecimenView } from '../../content/view';
import type { FacetId } from './trayFacets';

/** where found: a living animal comes from no bed */
export const LIVING = 'living';

/** What a tooth in the drawer can be found by. */
export function trayValues({ group, bed, part }: SpecimenView): Record<FacetId, string | null> {
	return { animal: group.id, feeding: null, found: bed?.id ?? (group.living ? LIVING : null), part };
}
