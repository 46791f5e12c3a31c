import type { CrownMeasures } from '../measure/crownMeasures';
import type { ShapeFacts } from './traits';

/**
 * Outer surface of the crown, mm2, without root and pulp: by the mesh's regions, else by integrating the perimeters
 * of the crown's sections over its height (upright walls: a few per cent low on a wide cone). Null without sections.
 */
export function crownSurface(measures: CrownMeasures, facts: ShapeFacts): number | null {
	const areas = facts.regionAreas_mm2;
	if (areas) {
		const sum = areas.enamel + areas.carina + areas.ridge + areas.facet + areas.dentine;
		return sum > 0 ? sum : null;
	}
	const { sections, axialHeight_mm } = measures;
	if (sections.length < 2) return null;
	const [low, high] = [sections[0], sections[sections.length - 1]];
	// below the lowest section the wall stands upright, above the highest it closes like a cone
	let sum = low.perimeter_mm * low.at + (high.perimeter_mm * (1 - high.at)) / 2;
	for (let i = 1; i < sections.length; i++) {
		const [a, b] = [sections[i - 1], sections[i]];
		sum += ((a.perimeter_mm + b.perimeter_mm) / 2) * (b.at - a.at);
	}
	return sum * axialHeight_mm;
}
