/** Why a line is drawn. */
export const LINE_KINDS = [
	'outline', // against the background
	'fold', // one part of the tooth stands before another
	'base', // where enamel ends
	'facet', // border of a worn face
	'break', // border of bare dentine, or a sharp corner
	'rim', // border of a pit or a pulp cavity
	'edge', // crest of a cutting edge
	'ridge', // crest of a ridge
] as const;
export type LineKind = (typeof LINE_KINDS)[number];

/** A line on the surface of a mesh, with the normal at each point so that one can tell which side it faces. */
export interface SurfaceLine {
	kind: LineKind;
	/** x, y, z per point, mm */
	points: number[];
	/** outward direction per point, not of unit length */
	normals: number[];
	/** the last point joins the first */
	closed: boolean;
}
