import type { TriMesh } from './triMesh';

/** Work on closed solids that a library does for us; given by the caller, since the library has to be loaded first. */
export interface Solids {
	/** What is left of a solid without another; its new faces get the region of the other's. Null when nothing is left. */
	subtract(from: TriMesh, gone: TriMesh): TriMesh | null;
	/** Convex hull of points (x, y, z), without regions. */
	hull(points: Float32Array): TriMesh;
}
