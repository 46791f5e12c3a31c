/**
 * ToothForm: a tooth as the trade describes it, in mm and degrees.
 *
 * Angles round the section are seen from the tip, in the tooth frame of mesh/triMesh.ts:
 * 0 = distal (+x), 90 = labial (+z), 180 = mesial (-x), 270 = lingual (-z).
 * In a form with a triangular section the angles of edges and ridges are stretched (on all its sections) so that 0, 180
 * and 270 fall on the three edges.
 * Heights `at`, `startsAt`, `from`, `to` are fractions of crown height: 0 = base, 1 = tip.
 */

export const SECTION_SHAPES = ['round', 'oval', 'blade', 'triangular', 'flat-sided'] as const;
/**
 * round       ellipse (a circle when base length = base width)
 * oval        slightly squared ellipse (superellipse)
 * blade       lens of two (parabolic) arcs meeting mesially and distally
 * triangular  three edges, mesial, distal and lingual; the labial face is flat
 * flat-sided  ellipse whose labial side is one flat face
 */
export type SectionShape = (typeof SECTION_SHAPES)[number];

export const TAPERS = ['needle', 'cone', 'bullet', 'dome'] as const;
/** How width falls from base to tip: needle = faster than straight, cone = straight, bullet = slower, dome = half-ellipse */
export type Taper = (typeof TAPERS)[number];

export const SIDES = ['mesial', 'distal', 'labial', 'lingual'] as const;
export type Side = (typeof SIDES)[number];

/** Angle round the section of each side, degrees. */
export const SIDE_ANGLE_DEG: Readonly<Record<Side, number>> = {
	distal: 0,
	labial: 90,
	mesial: 180,
	lingual: 270,
};

export interface SectionStop {
	/** height, 0 base .. 1 tip; stops lie at least 0.05 apart */
	at: number;
	shape: SectionShape;
	/** part of the way to another shape, neither of them triangular: share 0 = `shape` .. 1 = the other */
	towards?: { shape: Exclude<SectionShape, 'triangular'>; share: number };
	/** width/length of the section here, relative to the base's own ratio; 1 = as at the base */
	widthFactor?: number;
}

export interface CarinaForm {
	/** where round the section: a side, or degrees */
	where: Side | number;
	/** how far the edge stands out from the section, mm; less where the section's radius is under five times this */
	prominence_mm: number;
	/** lowest height that the edge reaches, 0 = to the base */
	from: number;
	/** serrations (denticles) per 5 mm of edge; absent or 0 = smooth */
	serrationsPer5mm?: number;
	/** how deep each notch is, mm; default a third of the prominence */
	serrationDepth_mm?: number;
}

export interface RidgesForm {
	/** apicobasal ridges counted round the section */
	count: number;
	height_mm: number;
	/** which part carries them */
	sides: 'all' | 'labial' | 'lingual';
	/** heights between which the longest ridges run */
	from: number;
	to: number;
	/** every second ridge stops at about 60 % of the way */
	alternating: boolean;
}

/** A waist below the crown; needs a root (with root state `none` there is nothing below the crown to narrow). */
export interface NeckForm {
	/** how much narrower than the crown's base, 0 .. 0.4 */
	constriction: number;
	/** length of the waist below the crown, mm */
	length_mm: number;
}

export type RootForm =
	| { state: 'none' } // cut clean at the crown's base: a crown broken off or a cast
	| {
			state: 'full';
			length_mm: number;
			/** widest labiolingual width of the root over the crown's base width, 0.6 .. 1.8 */
			swelling: number;
			/** base with infolded walls (plicidentine) */
			folded: boolean;
	  }
	| { state: 'open'; length_mm: number } // short, thin-walled, wide-open pulp: still growing
	| {
			state: 'resorbed'; // shed: a stub hollowed by the successor
			length_mm: number;
			pitSide: Side;
			/** depth of the pit from the side, mm */
			pitDepth_mm: number;
	  };

export interface PulpForm {
	/** how high the cavity reaches above the crown's base (may be negative), mm */
	height_mm: number;
	/** cavity width at the bottom opening over the outer width there, 0.1 .. 0.9 */
	opening: number;
}

export interface FacetForm {
	side: Side;
	/** angle between the facet's plane and the tooth's long axis (+y), 5 .. 85 degrees (small = steep); it must clear the base */
	angle_deg: number;
	/** how deep the plane cuts in, straight from the side, at the facet's centre height, mm */
	depth_mm: number;
	/** height of the facet's centre, 0 .. 1 */
	at: number;
}

export interface WearForm {
	/** the tip is worn flat down to this height above the base, mm */
	tipWornTo_mm?: number;
	facets?: FacetForm[];
}

export interface ToothForm {
	/** height of the unworn crown's highest point above the plane of its base, mm */
	crownHeight_mm: number;
	/** mesiodistal length of the base section over its carina-free outline, mm */
	baseLength_mm: number;
	/** labiolingual width of the base section, mm */
	baseWidth_mm: number;
	/** at least one stop; shapes are blended between stops */
	sections: SectionStop[];
	taper: Taper;
	/** how full the outline is, in place of `taper` and by degrees: -1 needle, 0 cone, 1 bullet, 2 dome */
	fullness?: number;
	curve: {
		/** total turning of the centreline towards distal, degrees (negative = mesial) */
		distal_deg: number;
		/** total turning towards lingual, degrees (negative = labial) */
		lingual_deg: number;
		/** height where it begins */
		startsAt: number;
	};
	/** radius of the rounded tip, mm; a dome whose own curve is blunter keeps that curve */
	tipRadius_mm: number;
	carinae: CarinaForm[];
	ridges?: RidgesForm;
	neck?: NeckForm;
	root: RootForm;
	pulp?: PulpForm;
	wear?: WearForm;
}

/** Why a form cannot be made: `path` is the field (`wear.facets[0].depth_mm`), the rest is plain data for a message. */
export interface FormProblem {
	code:
		| 'out-of-range' // found outside [min, max]
		| 'tip-too-blunt' // tip radius does not fit the crown
		| 'no-crown-left' // wear removes the crown
		| 'serration-too-fine' // finer than the mesh can carry
		| 'ridge-too-tall' // ridges or carinae would meet or cross the axis
		| 'pulp-breaks-out' // cavity would come through the wall
		| 'sections-empty'
		| 'not-closed'; // the sculptor's own check failed
	path: string;
	found?: number;
	min?: number;
	max?: number;
}
