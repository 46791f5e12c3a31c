/**
 * The one mesh type of the project.
 *
 * Frame of a tooth mesh ("tooth frame", millimetres, right-handed):
 *   +y  apical: from the crown's base towards the tip
 *   +x  distal: along the jaw, away from the front midline (-x is mesial)
 *   +z  labial: towards the lip (-z is lingual)
 *   origin: centre of the crown's base section
 * A scan keeps the file's own frame until it has been measured and turned.
 */

/** What a triangle of a tooth's surface is. Order matters: the index is what `TriMesh.regions` stores. */
export const REGIONS = [
	'enamel',
	'carina',
	'ridge',
	'facet', // worn flat: dentine or polished enamel shows
	'dentine', // broken or bare dentine
	'root',
	'pit', // resorption pit left by the successor
	'pulp', // wall of the pulp cavity
] as const;

export type Region = (typeof REGIONS)[number];

export interface TriMesh {
	/** x, y, z per vertex, mm; length = 3 * vertex count */
	readonly positions: Float32Array;
	/** three vertex numbers per triangle, counter-clockwise seen from outside; length = 3 * triangle count */
	readonly indices: Uint32Array;
	/** one index into REGIONS per triangle; absent when nothing is known (a raw scan) */
	readonly regions?: Uint8Array;
}

export const vertexCount = (mesh: TriMesh): number => mesh.positions.length / 3;
export const triangleCount = (mesh: TriMesh): number => mesh.indices.length / 3;
export const regionIndex = (region: Region): number => REGIONS.indexOf(region);
