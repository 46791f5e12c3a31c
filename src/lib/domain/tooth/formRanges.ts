/**
 * Least and greatest value of every number in a form, both allowed. Messages quote these. Lengths in mm,
 * angles in degrees, heights as fractions of crown height. They bound what the sculptor can make, not what nature
 * does; common practice, no source.
 */
export const FORM_RANGES = {
	crownHeight_mm: [0.5, 300],
	baseLength_mm: [0.3, 200],
	baseWidth_mm: [0.3, 200],
	/** the longer base diameter over the shorter */
	baseAspect: [1, 6],
	tipRadius_mm: [0.005, 60],
	'sections.at': [0, 1],
	'sections.widthFactor': [0.4, 1.8],
	'sections.towards.share': [0, 1],
	fullness: [-1, 2],
	'curve.distal_deg': [-80, 80],
	'curve.lingual_deg': [-80, 80],
	'curve.startsAt': [0, 0.8],
	/** both turns together, degrees */
	'curve.total_deg': [0, 80],
	'carinae.where': [0, 360],
	'carinae.prominence_mm': [0.005, 20],
	'carinae.from': [0, 0.85],
	'carinae.serrationsPer5mm': [0, 100],
	'carinae.serrationDepth_mm': [0.002, 10],
	'ridges.count': [0, 48],
	'ridges.height_mm': [0.002, 10],
	'ridges.from': [0, 0.9],
	'ridges.to': [0.1, 1],
	'neck.constriction': [0, 0.4],
	'neck.length_mm': [0.05, 150],
	'root.length_mm': [0.1, 400],
	'root.swelling': [0.6, 1.8],
	'root.pitDepth_mm': [0.02, 60],
	'pulp.height_mm': [-400, 300],
	'pulp.opening': [0.1, 0.9],
	'wear.tipWornTo_mm': [0, 300],
	'wear.facets.angle_deg': [5, 85],
	'wear.facets.depth_mm': [0.005, 100],
	'wear.facets.at': [0.05, 1],
} as const satisfies Readonly<Record<string, readonly [number, number]>>;

export type RangedField = keyof typeof FORM_RANGES;

/** Limits that depend on other fields of the form. */
export const FORM_LIMITS = {
	/** least distance between two section stops, so that one turns into the other without a step */
	stopsApart: 0.05,
	/** tip radius over the least radius of the section at the tip, and over crown height */
	tipOverRadius: 0.85,
	tipOverHeight: 0.4,
	/** keel height over the base's smaller half width */
	keelOverRadius: 0.5,
	/** ridge height over the gap between ridges at the base, and over the base's smaller half width */
	ridgeOverGap: 0.45,
	ridgeOverRadius: 0.3,
	/** denticles along one edge that the mesh can carry; with many ridges fewer, which `sculpt` says */
	denticles: 90,
	/** highest reach of the pulp cavity over crown height */
	pulpOverHeight: 0.88,
	/** part of the crown's height that wear must leave */
	crownLeft: 0.12,
	/** pit depth over the half width on its side */
	pitOverRadius: 0.8,
	/** neck length over root length */
	neckOverRoot: 0.8,
} as const;
