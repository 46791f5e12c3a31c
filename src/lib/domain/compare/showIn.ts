import { sideAt, edgesOf, ridgesOf } from './crownRelief';
import type { ComparedTooth, TraitId } from './traits';
import type { Side } from '../tooth/form';

/**
 * A view of a tooth: looking at that side of it, or down on its tip, or up at its base. Sides are the tooth's own; where
 * `facts.labial` is '-z', its labial side is the one along -z of the prepared mesh.
 */
export type ShowView = 'labial' | 'lingual' | 'mesial' | 'distal' | 'apical' | 'basal';

/** sides in the order in which they are preferred for edges: distal edges are the longer ones */
const EDGE_ORDER: readonly Side[] = ['distal', 'mesial', 'lingual', 'labial'];

/** The view in which a trait of two teeth can be seen, the same whichever of them comes first. */
export function showIn(id: TraitId, a: ComparedTooth, b: ComparedTooth): ShowView {
	switch (id) {
		case 'carinae':
		case 'edgeSide':
			return edgeView(a, b);
		case 'serrations':
			return edgeView(...toothed(a, b));
		case 'section':
		case 'roundness':
			return 'apical';
		case 'ridges':
		case 'ridgeSide':
			return ridgeView(a, b);
		case 'root':
			return firstOf(pitSide(a), pitSide(b)) ?? 'basal';
		case 'tipWorn':
		case 'wear':
			return facetView(a, b);
		case 'slenderness':
		case 'curvature':
		case 'tip':
		case 'size':
			return 'labial';
	}
}

function edgeSides(tooth: ComparedTooth): Set<Side> {
	return new Set((edgesOf(tooth)?.angles_deg ?? []).map(sideAt));
}

/** Edge-on to an edge that only one of them has, else to one that both have. */
function edgeView(a: ComparedTooth, b: ComparedTooth): ShowView {
	const [one, other] = [edgeSides(a), edgeSides(b)];
	return (
		EDGE_ORDER.find((side) => one.has(side) !== other.has(side)) ??
		EDGE_ORDER.find((side) => one.has(side)) ??
		'distal'
	);
}

/** The tooth whose edges are saws, twice; both where both or neither have them. */
function toothed(a: ComparedTooth, b: ComparedTooth): [ComparedTooth, ComparedTooth] {
	const saw = (tooth: ComparedTooth): boolean => (tooth.facts.form?.serrationsPer5mm ?? 0) > 0;
	if (saw(a) === saw(b)) return [a, b];
	return saw(a) ? [a, a] : [b, b];
}

function ridgeView(a: ComparedTooth, b: ComparedTooth): ShowView {
	const sides = [ridgesOf(a)?.side ?? null, ridgesOf(b)?.side ?? null];
	// beside ridges all round, the bare side of the other tooth shows the difference
	if (sides.includes('all'))
		return sides.includes('lingual') ? 'labial' : sides.includes('labial') ? 'lingual' : 'labial';
	return sides.includes('lingual') ? 'lingual' : 'labial';
}

/** One of two views, the same whichever comes first. */
function firstOf(x: ShowView | null, y: ShowView | null): ShowView | null {
	if (x === null || y === null) return x ?? y;
	return x < y ? x : y;
}

function pitSide({ facts, features }: ComparedTooth): ShowView | null {
	if (facts.form?.pitSide) return facts.form.pitSide;
	return markedSide('pit', features, facts);
}

/** The side of the largest facet of the more worn tooth. */
function facetView(a: ComparedTooth, b: ComparedTooth): ShowView {
	const [x, y] = [largestFacet(a), largestFacet(b)];
	if (x.area_mm2 === y.area_mm2) return firstOf(x.view, y.view) ?? 'labial';
	return (x.area_mm2 > y.area_mm2 ? (x.view ?? y.view) : (y.view ?? x.view)) ?? 'labial';
}

function largestFacet({ measures, facts, features }: ComparedTooth): {
	area_mm2: number;
	view: ShowView | null;
} {
	const [largest] = measures.facets;
	if (largest) return { area_mm2: largest.area_mm2, view: largest.where };
	const area_mm2 = facts.regionAreas_mm2?.facet ?? 0;
	const side = facts.form?.facetSides[0] ?? markedSide('facet', features, facts);
	return { area_mm2, view: side ?? (facts.form?.tipWorn ? 'apical' : null) };
}

/** Side on which a feature of a kind is marked; where labial looks along -z the mesh's angles run the other way. */
function markedSide(
	kind: string,
	features: ComparedTooth['features'],
	{ labial }: ComparedTooth['facts'],
): Side | null {
	const marked = features.find((feature) => feature.kind === kind);
	return marked ? sideAt(labial === '-z' ? -marked.where_deg : marked.where_deg) : null;
}
