import type { OutlineShape } from '../measure/crownMeasures';
import { SIDE_ANGLE_DEG, type ToothForm } from '../tooth/form';
import type { FormFacts } from './traits';

/** least width over length of a section that is called round (see measure/outlineShape.ts) */
const ROUND_RATIO = 0.9;

/** What a form says of the traits that a mesh may not show. */
export function formFacts(form: ToothForm): FormFacts {
	const { root, wear, ridges } = form;
	return {
		carinae_deg: form.carinae.map(({ where }) => (typeof where === 'number' ? where : SIDE_ANGLE_DEG[where])),
		serrationsPer5mm: Math.max(0, ...form.carinae.map((carina) => carina.serrationsPer5mm ?? 0)),
		ridges: ridges && ridges.count > 0 ? { count: ridges.count, sides: ridges.sides } : null,
		section: midSection(form),
		root: root.state,
		pitSide: root.state === 'resorbed' ? root.pitSide : null,
		facetSides: (wear?.facets ?? []).map(({ side }) => side),
		tipWorn: wear?.tipWornTo_mm !== undefined,
	};
}

function midSection({ sections, baseLength_mm, baseWidth_mm }: ToothForm): OutlineShape | null {
	const stops = [...sections].sort((a, b) => a.at - b.at);
	const below = stops.findLast(({ at }) => at <= 0.5) ?? stops[0];
	const above = stops.find(({ at }) => at >= 0.5) ?? stops[stops.length - 1];
	if (!below || below.shape !== above.shape) return null;
	if (below.shape === 'flat-sided') return 'other';
	if (below.shape === 'blade' || below.shape === 'triangular') return below.shape;
	const part = above.at > below.at ? (0.5 - below.at) / (above.at - below.at) : 0;
	const [low, high] = [below.widthFactor ?? 1, above.widthFactor ?? 1];
	const ratio = (baseWidth_mm / baseLength_mm) * (low + part * (high - low));
	return Math.min(ratio, 1 / ratio) >= ROUND_RATIO ? 'round' : 'oval';
}
