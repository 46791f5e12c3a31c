import { edgesOf } from '../compare/crownRelief';
import { showIn, type ShowView } from '../compare/showIn';
import { TRAIT_IDS, type ComparedTooth, type TraitId } from '../compare/traits';
import { traitsOf } from '../compare/traitsOf';
import { PART_KINDS, type PartKind, type QuizTooth, type TouchPart } from './question';

/** What the quiz has to be told beside the tooth itself. */
export type QuizFacts = Pick<QuizTooth, 'feeding' | 'jawPlace'>;

/** heights between which an edge is sure to run; ours */
const EDGE_SPAN = { from: 0.2, to: 0.9 };

/** A tooth as the quiz asks about it, from what is measured, modelled and marked. */
export function quizTooth(tooth: MarkedTooth, more: QuizFacts): QuizTooth {
	return {
		id: tooth.id,
		group: tooth.group.id,
		traits: traitsOf(tooth),
		views: Object.fromEntries(TRAIT_IDS.map((id) => [id, showIn(id, tooth, tooth)])) as Record<
			TraitId,
			ShowView
		>,
		parts: touchParts(tooth),
		crownHeight_mm: tooth.measures.crownHeight_mm,
		...more,
	};
}

/** A compared tooth whose marks also tell how high they stand. */
export interface MarkedTooth extends Omit<ComparedTooth, 'features'> {
	features: readonly { kind: string; at: number; where_deg: number }[];
}

/**
 * What can be touched: all edges, from the form or the mesh and not from the marks, which may leave some out; the tip
 * where it is not worn away; facets, pits, necks and roots as marked.
 */
function touchParts(tooth: MarkedTooth): TouchPart[] {
	const edges = (edgesOf(tooth)?.angles_deg ?? []).map((where_deg): TouchPart => ({
		kind: 'carina',
		at: 0.5,
		where_deg: onMesh(where_deg, tooth.facts.labial),
		...EDGE_SPAN,
	}));
	const traits = traitsOf(tooth);
	const tip: TouchPart[] = traits.tipWorn.value === false ? [{ kind: 'tip', at: 1, where_deg: 90 }] : [];
	const marked = tooth.features.flatMap(({ kind, at, where_deg }): TouchPart[] =>
		isPart(kind) && kind !== 'carina' && kind !== 'tip' ? [{ kind, at, where_deg }] : [],
	);
	return [...edges, ...tip, ...marked.filter(({ kind }) => kind !== 'facet' || facetsAllMarked(tooth))];
}

/** A facet that nobody marked would be refused when touched, so facets are asked for only where all of them are marked. */
function facetsAllMarked({ facts, measures, features }: MarkedTooth): boolean {
	const made = facts.form
		? facts.form.facetSides.length + (facts.form.tipWorn ? 1 : 0)
		: measures.facets.length;
	return features.filter(({ kind }) => kind === 'facet').length >= made;
}

/** where labial looks along -z the mesh's angles run the other way */
const onMesh = (deg: number, labial: '+z' | '-z' | null): number =>
	labial === '-z' ? (360 - deg) % 360 : deg;

const isPart = (kind: string): kind is PartKind => (PART_KINDS as readonly string[]).includes(kind);
