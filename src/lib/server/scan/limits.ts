/**
 * Bounds on what is taken in, so that no file, whatever it claims, makes the readers ask for more than about 1.5 GB:
 * the file itself, its corners (8 bytes a number while reading, 4 after) and its triangles.
 */
export const LIMITS = {
	/** bytes of one file, or of one buffer beside a glTF */
	fileBytes: 500e6,
	triangles: 6e6,
	/** more of anything than this was never in the file: it is not cut off, its count is wrong */
	plausibleCount: 1e8,
	/** a mesh of 6 million separate triangles has three corners for each */
	vertices: 18e6,
	/** bytes unpacked from compressed parts of one file */
	unpackedBytes: 450e6,
	/** corners of one polygon */
	polygonCorners: 20_000,
	/** objects within objects in a glTF scene */
	nodeDepth: 256,
	/** brackets within brackets in a glTF's text */
	jsonDepth: 128,
} as const;
