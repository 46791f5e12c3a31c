import type { Vec3 } from '../vec3';

/** Points that define the crown, in the mesh's own frame, mm. */
export interface CrownMarks {
	apex: Vec3;
	baseMesial: Vec3;
	baseDistal: Vec3;
	/** optional: a direction in the plane of the base, towards the lip */
	labial?: Vec3;
}

/** Outline of a section with its edges and ridges smoothed off. Limits: outlineShape.ts. */
export const OUTLINE_SHAPES = ['round', 'oval', 'blade', 'triangular', 'other'] as const;
export type OutlineShape = (typeof OUTLINE_SHAPES)[number];

/** A ridge or a sharp edge (carina) that runs up the crown. */
export interface CrownLine {
	/**
	 * where it stands round the section, seen from the middle of the section: 0 distal, 90 labial, 180 mesial, 270 lingual.
	 * Unmarked, labial and lingual may be swapped.
	 */
	angle_deg: number;
	/** how far it stands out: a ridge over the hollows beside it; a carina over the outline smoothed, mm */
	prominence_mm: number;
	/** lowest and highest place where it was found, fractions of axial height; never below 0.03 or above 0.95 */
	from: number;
	to: number;
}

export const FACET_PLACES = ['apical', 'labial', 'lingual', 'mesial', 'distal'] as const;
export type FacetPlace = (typeof FACET_PLACES)[number];

/** A flat patch that wear has cut. */
export interface WornFacet {
	area_mm2: number;
	/** unit, outward, in the mesh's own frame */
	normal: Vec3;
	/** which way it looks: apical when nearer to the axis than to any side */
	where: FacetPlace;
}

export interface SectionMeasure {
	/** fraction of axial height above the base, 0 .. 1 */
	at: number;
	area_mm2: number;
	perimeter_mm: number;
	/** mesiodistal */
	length_mm: number;
	/** labiolingual */
	width_mm: number;
	/** 4*pi*A/P^2 */
	circularity: number;
	/** null when the mesh is too coarse here to tell */
	shape: OutlineShape | null;
}

export interface MeasureWarning {
	code: string;
	message: string;
	/** of `not-one-tooth`: the same as data, so that it can be said in another language */
	doubt?: { is: 'pieces' | 'openings'; n: number } | { is: 'hollow' | 'row' };
}

/**
 * Measures of one crown, from its mesh alone. Definitions: Smith, Vann & Dodson 2005
 * (doi:10.1002/ar.a.20206) and Hendrickx, Mateus & Araujo 2015 (doi:10.1080/02724634.2015.982797).
 * A value that the mesh cannot support is null and a warning says why.
 */
export interface CrownMeasures {
	triangles: number;
	vertices: number;
	components: number;
	watertight: boolean;
	surfaceArea_mm2: number;
	volume_mm3: number | null;
	apex: Vec3;
	baseMesial: Vec3;
	baseDistal: Vec3;
	/** distance of the apex above the plane of the crown's base */
	axialHeight_mm: number;
	/** CH: straight line, apex to the distal base point */
	crownHeight_mm: number;
	/** AL: straight line, apex to the mesial base point */
	apicalLength_mm: number;
	/** CBL: mesiodistal length at the crown's base */
	crownBaseLength_mm: number;
	/** CBW: labiolingual width at the crown's base */
	crownBaseWidth_mm: number;
	/** CBR = CBW / CBL */
	crownBaseRatio: number;
	/** CHR = CH / CBL */
	crownHeightRatio: number;
	midCrownLength_mm: number | null;
	midCrownWidth_mm: number | null;
	/** CA, angle at the mesial base point: acos((CBL^2+AL^2-CH^2)/(2 CBL AL)) */
	crownAngle_deg: number;
	/** CAA, angle at the apex: acos((CH^2+AL^2-CBL^2)/(2 CH AL)) */
	apexAngle_deg: number;
	/** radius of the sphere that best fits the apex */
	tipRadius_mm: number | null;
	/** total turning of the centreline from base to apex */
	curvature_deg: number | null;
	/** apicobasal ridges counted round the mid-crown section, by the lines of `ridges` that pass it */
	ridgeCount: number | null;
	/** by rising angle; empty when ridgeCount is null */
	ridges: CrownLine[];
	/** sharp edges, wherever they run; with `carinae` they are counted apart from ridges */
	carinaCount: number | null;
	carinae: CrownLine[];
	/** largest first */
	facets: WornFacet[];
	/** at 0.1 .. 0.9 of axial height */
	sections: SectionMeasure[];
	warnings: MeasureWarning[];
}

export interface MeasureProblem {
	code: 'empty' | 'not-a-number' | 'bad-index' | 'no-area' | 'no-base' | 'no-height';
	message: string;
}
