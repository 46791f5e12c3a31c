import type { Region } from '../mesh/triMesh';
import type { CrownMeasures, OutlineShape } from '../measure/crownMeasures';
import type { Side } from '../tooth/form';

/**
 * Traits by which two teeth are told apart, in the order in which ties are settled: what tells most about the kind of
 * tooth first, what only one tooth's own life has made last (common practice, no source).
 */
export const TRAIT_IDS = [
	'carinae',
	'serrations',
	'section',
	'slenderness',
	'edgeSide',
	'ridges',
	'roundness',
	'curvature',
	'ridgeSide',
	'tip',
	'root',
	'size',
	'tipWorn',
	'wear',
] as const;
export type TraitId = (typeof TRAIT_IDS)[number];

/** share = a part of one, shown in percent */
export type TraitUnit = 'mm' | 'deg' | 'share' | 'ratio';

export type TraitKind =
	| {
			kind: 'number';
			unit: TraitUnit;
			/** lengths and ratios are compared by their logarithms, so that twice and half are equally far */
			scale: 'log' | 'linear';
			/** numbers no further apart than this on their scale are alike: measuring does not tell them apart; ours */
			precision: number;
			/** standard deviation on the scale where the exhibit has too few teeth to give one; ours */
			spread: number;
			prior: number;
	  }
	| { kind: 'count'; prior: number }
	| {
			kind: 'category';
			values: readonly string[];
			/** pairs that pass into each other: they lie half as far apart as others */
			near: readonly (readonly [string, string])[];
			prior: number;
	  }
	| { kind: 'yes-no'; prior: number };

/** the 8 % within which two measured lengths or ratios count as the same */
const ABOUT_ALIKE = Math.log(1.08);

/**
 * What each trait is. `prior` is how telling it is (0 .. 1) where the exhibit's teeth cannot say: edges and section tell
 * groups apart, size, root and wear change within one animal (common practice, no source; the figures are ours).
 */
export const TRAITS: Readonly<Record<TraitId, TraitKind>> = {
	carinae: { kind: 'count', prior: 0.9 },
	serrations: { kind: 'yes-no', prior: 0.85 },
	section: {
		kind: 'category',
		values: ['round', 'oval', 'blade', 'triangular', 'other'] satisfies OutlineShape[],
		near: [
			['round', 'oval'],
			['oval', 'blade'],
		],
		prior: 0.8,
	},
	slenderness: {
		kind: 'number',
		unit: 'ratio',
		scale: 'log',
		precision: ABOUT_ALIKE,
		spread: 0.4,
		prior: 0.75,
	},
	/** where a pair of edges stands: along the jaw (mesial and distal) or across it (labial and lingual) */
	edgeSide: { kind: 'category', values: ['along', 'across'], near: [], prior: 0.65 },
	ridges: { kind: 'category', values: ['none', 'few', 'many'], near: [['few', 'many']], prior: 0.7 },
	roundness: {
		kind: 'number',
		unit: 'ratio',
		scale: 'log',
		precision: ABOUT_ALIKE,
		spread: 0.25,
		prior: 0.6,
	},
	curvature: { kind: 'number', unit: 'deg', scale: 'linear', precision: 5, spread: 12, prior: 0.55 },
	ridgeSide: {
		kind: 'category',
		values: ['all', 'labial', 'lingual', 'one-side'],
		near: [],
		prior: 0.5,
	},
	tip: { kind: 'number', unit: 'share', scale: 'log', precision: Math.log(1.15), spread: 0.6, prior: 0.45 },
	root: { kind: 'category', values: ['none', 'full', 'open', 'resorbed'], near: [], prior: 0.4 },
	size: { kind: 'number', unit: 'mm', scale: 'log', precision: ABOUT_ALIKE, spread: 0.6, prior: 0.35 },
	tipWorn: { kind: 'yes-no', prior: 0.3 },
	wear: { kind: 'number', unit: 'share', scale: 'linear', precision: 0.01, spread: 0.05, prior: 0.25 },
};

/** Why a trait cannot be told. */
export type Unknown =
	| 'not-measurable' // the mesh does not show it
	| 'not-recorded' // a scan does not say
	| 'worn-flat' // the tip is gone
	| 'too-low' // a crown too low to have a bend
	| 'no-edges' // smooth or toothed edges: there are none
	| 'no-pair' // edges that are no pair on opposite sides
	| 'sides-not-known' // a scan whose labial side is not marked
	| 'no-ridges' // no ridges that could stand on a side
	| 'in-the-jaw'; // the jaw hides the root

export type TraitValue = number | string | boolean;

/** One trait of one tooth. */
export interface Trait {
	id: TraitId;
	kind: TraitKind['kind'];
	/** of numbers only */
	unit?: TraitUnit;
	/** number or count; category; yes or no; null when it cannot be told */
	value: TraitValue | null;
	/** beside a null value */
	unknown?: Unknown;
	/** how many there are, beside the category of `ridges` */
	count?: number;
	/** where it was read: on the mesh, in the form that a model was made from, or in what the curator wrote */
	from: 'measured' | 'form' | 'record';
}

export type Traits = Readonly<Record<TraitId, Trait>>;

/** What the form of a model says and its mesh may not show; see tooth/form.ts. */
export interface FormFacts {
	/** where the edges stand round the section, degrees */
	carinae_deg: number[];
	/** on the finest edge; 0 = all edges are smooth */
	serrationsPer5mm: number;
	ridges: { count: number; sides: 'all' | 'labial' | 'lingual' } | null;
	/** half-way up; null where one shape passes into another */
	section: OutlineShape | null;
	root: 'none' | 'full' | 'open' | 'resorbed';
	pitSide: Side | null;
	facetSides: Side[];
	tipWorn: boolean;
}

/** What is known of a shape beside its measures; small, since every page carries it for every tooth. */
export interface ShapeFacts {
	/** which way the labial side of the prepared mesh looks; null where that is not known, as on a scan without marks */
	labial: '+z' | '-z' | null;
	/** area of each region of the prepared mesh, mm2; null where nothing is known of its regions */
	regionAreas_mm2: Readonly<Record<Region, number>> | null;
	/** of a model only */
	form: FormFacts | null;
}

/** A tooth as it is compared: a page's specimen is one. */
export interface ComparedTooth {
	id: string;
	group: { id: string };
	part: 'crown' | 'shed-crown' | 'rooted-tooth' | 'germ' | 'jaw-piece';
	measures: CrownMeasures;
	facts: ShapeFacts;
	/** what the curator has marked; `where_deg` round the prepared mesh, from +x towards +z */
	features: readonly { kind: string; where_deg: number }[];
}
