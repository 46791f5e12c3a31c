/** One level of detail of a prepared tooth, in the tooth frame, ready to be written or drawn. */
export interface ShapeLevel {
	/** x, y, z per vertex, mm */
	positions: Float32Array;
	/** unit normal per vertex; vertices on a crease stand there once for each side */
	normals: Float32Array;
	/** how open the surface is to the light, 0 = wholly shut in, 255 = open */
	openness: Uint8Array;
	/** index into REGIONS; all three vertices of a triangle hold the same */
	regions: Uint8Array;
	/** the scan's own colour: red, green, blue per vertex, 0 .. 255 in the sRGB curve; absent where there is none */
	colours?: Uint8Array;
	/** three vertex numbers per triangle, counter-clockwise from outside */
	indices: Uint32Array;
}
