import type { CrownMeasures } from '../measure/crownMeasures';
import type { Thresholds } from './thresholds';

export const PLACE_TRAITS = [
	'slenderness',
	'tip',
	'edges',
	'roundness',
	'section',
	'curve',
	'wear',
	'ridges',
	'size',
] as const;
export type PlaceTrait = (typeof PLACE_TRAITS)[number];
/** Traits that move a tooth in the triangle; the others only help to name guilds. */
export type PullingTrait = Exclude<PlaceTrait, 'ridges' | 'size'>;

/** Why a reading is uncertain or missing. */
export type ReadingNote =
	| 'tip-worn' // the crown was taller, and its tip another
	| 'not-measurable' // the mesh does not show it
	| 'not-recorded' // the table does not say
	| 'germ'; // not grown out

/** What is known of one trait. */
export interface Reading {
	/** null = nothing is known */
	value: number | null;
	/** one standard deviation, on the trait's scale (logarithm for slenderness, tip, roundness and size) */
	spread: number;
	from: 'measured' | 'declared' | 'published';
	note?: ReadingNote;
}

/**
 * What can be told of a tooth for its food.
 * slenderness   height of the apex above its base over the longer base diameter: near CHR, but neither a low crown's slant nor
 *               a tooth set turned in its jaw makes it slender
 * tip           tip radius over the mean radius of the base (half of the root of length times width)
 * edges         0 none; about 0.35 weak; 1 two strong sharp edges; a little more with serrations
 * roundness     shorter base diameter over longer
 * section       0 round or oval half-way up; 1 lens or three-edged
 * curve         total turning of the centreline, degrees
 * wear          share of the crown that is worn flat, 0 .. 1
 * ridges        apicobasal ridges, how many
 * size          crown height, mm
 */
export type Evidence = Readonly<Record<PlaceTrait, Reading>>;

/** What a curator or the form of a model says beside the mesh; `FormFacts` of compare/ is one. */
export interface DeclaredTraits {
	carinae_deg?: readonly number[];
	/** on the finest edge; 0 = smooth */
	serrationsPer5mm?: number;
	ridges?: { count: number } | null;
	section?: string | null;
	tipWorn?: boolean;
}

/** How a tooth has come down to us. */
export interface Preserved {
	part?: 'crown' | 'shed-crown' | 'rooted-tooth' | 'germ' | 'jaw-piece';
	/** share of the crown's surface that wear has cut flat, where it is known better than by the measures' facets */
	wornShare?: number | null;
}

/** Readings of a crown from its measures, from what is declared beside them, and from how it is preserved. */
export function evidenceOf(
	measures: CrownMeasures,
	thresholds: Thresholds,
	declared: DeclaredTraits = {},
	preserved: Preserved = {},
): Evidence {
	const { spread, unknown } = thresholds;
	const { crownBaseLength_mm: length, crownBaseWidth_mm: width } = measures;
	const measured = (value: number, sd: number, note?: ReadingNote): Reading => ({
		value,
		spread: sd,
		from: 'measured',
		...(note ? { note } : {}),
	});
	const missing = (sd: number, note: ReadingNote): Reading => ({
		value: null,
		spread: sd,
		from: 'measured',
		note,
	});
	const tipFlat = measures.warnings.some(({ code }) => code === 'tip-flat');
	const worn = tipFlat || declared.tipWorn === true;
	const height = unwornHeight(measures, worn);
	const { tipRadius_mm, curvature_deg } = measures;
	const mid = measures.sections.find(({ at }) => at === 0.5)?.shape ?? null;
	const section = declared.section ?? mid;
	const share = preserved.wornShare ?? wornShare(measures);
	const ridges = declared.ridges === undefined ? measures.ridgeCount : (declared.ridges?.count ?? 0);
	return {
		slenderness: measured(
			height.mean_mm / Math.max(length, width),
			Math.hypot(spread.slenderness, height.spread),
			worn ? 'tip-worn' : preserved.part === 'germ' ? 'germ' : undefined,
		),
		tip:
			tipRadius_mm === null || tipFlat
				? missing(unknown.tip, tipFlat ? 'tip-worn' : 'not-measurable')
				: measured(
						tipRadius_mm / (Math.sqrt(length * width) / 2),
						worn ? Math.hypot(spread.tip, unknown.tip / 2) : spread.tip,
						worn ? 'tip-worn' : undefined,
					),
		edges: edgesReading(measures, thresholds, declared),
		roundness: measured(Math.min(length, width) / Math.max(length, width), spread.roundness),
		section:
			section === null || section === 'other'
				? missing(unknown.section, 'not-measurable')
				: measured(section === 'blade' || section === 'triangular' ? 1 : 0, spread.section),
		curve:
			curvature_deg === null
				? missing(unknown.curve, 'not-measurable')
				: measured(curvature_deg, worn ? 2 * spread.curve : spread.curve, worn ? 'tip-worn' : undefined),
		wear: measured(Math.min(1, share), spread.wear),
		ridges: ridges === null ? missing(8, 'not-measurable') : measured(ridges, 2),
		size: measured(height.mean_mm, Math.hypot(0.05, height.spread), worn ? 'tip-worn' : undefined),
	};
}

/** How much of the way to the straight-line height a lost tip is taken to have reached, and how uncertain that is; ours. */
const LOST_TIP = { reached: 0.7, spread: 0.35, most: 2.5 } as const;

/**
 * Height of the crown before its tip was lost, and the logarithm's standard deviation: between the height that is left
 * and the one at which the straight line through the topmost two sections meets the axis. Full outlines end below that line.
 */
function unwornHeight(measures: CrownMeasures, worn: boolean): { mean_mm: number; spread: number } {
	const left_mm = measures.axialHeight_mm;
	const [low, high] = measures.sections.slice(-2);
	if (!worn || !high || high.at <= low.at) return { mean_mm: left_mm, spread: 0 };
	const size = ({ length_mm, width_mm }: typeof low): number => Math.sqrt(length_mm * width_mm);
	const narrowing = (size(low) - size(high)) / (high.at - low.at);
	const top = size(high) - narrowing * (1 - high.at);
	const { reached, spread, most } = LOST_TIP;
	const straight = narrowing > 0 ? Math.min(most, 1 + Math.max(0, top) / narrowing) : most;
	return { mean_mm: left_mm * straight ** reached, spread: spread * Math.log(straight) };
}

function wornShare({ facets, sections, axialHeight_mm }: CrownMeasures): number {
	const worn = facets.reduce((sum, { area_mm2 }) => sum + area_mm2, 0);
	const girth = sections.reduce((sum, { perimeter_mm }) => sum + perimeter_mm, 0) / (sections.length || 1);
	return girth > 0 ? worn / (girth * axialHeight_mm) : 0;
}

/** Two most prominent edges over the base's smaller half width; smooth or serrated. */
function edgesReading(
	measures: CrownMeasures,
	{ edges, spread, unknown }: Thresholds,
	declared: DeclaredTraits,
): Reading {
	const count = declared.carinae_deg?.length ?? measures.carinaCount;
	if (count === null) return { value: null, spread: unknown.edges, from: 'measured', note: 'not-measurable' };
	if (count === 0)
		return { value: 0, spread: spread.edges, from: declared.carinae_deg ? 'declared' : 'measured' };
	const half_mm = Math.min(measures.crownBaseLength_mm, measures.crownBaseWidth_mm) / 2;
	const prominent = measures.carinae.map(({ prominence_mm }) => prominence_mm).sort((a, b) => b - a);
	const serrated = (declared.serrationsPer5mm ?? 0) > 0 ? edges.serrated : 0;
	if (prominent.length === 0) {
		// edges that are declared and that the mesh does not resolve
		return {
			value: Math.min(1, edges.middle * Math.min(2, count)) + serrated,
			spread: 2 * spread.edges,
			from: 'declared',
		};
	}
	const two = prominent.slice(0, 2).reduce((sum, p) => sum + p, 0) / 2;
	const score = Math.min(1, two / half_mm / edges.fullShare);
	return { value: score + serrated, spread: spread.edges, from: 'measured' };
}
