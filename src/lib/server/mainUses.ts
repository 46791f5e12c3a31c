import type { Feeding } from '../content/feedingContent';
import type { SpecimenView } from '../content/view';
import { evidenceOf } from '../domain/feeding/evidence';
import { mainCorner } from '../domain/feeding/mainCorner';
import { placeTooth } from '../domain/feeding/place';
import type { Corner } from '../domain/feeding/position';

/**
 * What each tooth's shape is above all good for, by specimen id; `several` where nothing stands out. Empty without the
 * folder `feeding/`, whose thresholds say how shapes are read.
 */
export function mainUses(
	specimens: readonly SpecimenView[],
	feeding: Feeding | undefined,
): Record<string, Corner | 'several'> {
	if (!feeding) return {};
	const { thresholds } = feeding;
	return Object.fromEntries(
		specimens.map(({ id, measures, facts, part }) => {
			const { position } = placeTooth(
				evidenceOf(measures, thresholds, facts.form ?? {}, { part }),
				thresholds,
			);
			return [id, mainCorner(position) ?? 'several'];
		}),
	);
}
