import type { Paint } from './paint';

/** A mesh as the file has it, in the file's own numbers. */
export interface RawMesh {
	/** x, y, z per corner; double precision where the file has more digits than a single holds */
	positions: Float32Array | Float64Array;
	/** three corners per triangle; null: every three corners in order are one */
	indices: Uint32Array | null;
	/** red, green, blue per corner, 0 .. 255 */
	colours?: Uint8Array;
	/** pictures on the surface */
	paint?: Paint;
	warnings?: ScanWarning[];
}

/** Something to know about a file that could be read all the same. */
export interface ScanWarning {
	code:
		| 'unlikely-size'
		| 'inside-out'
		| 'unused-points'
		| 'far-from-origin'
		| 'bad-points'
		| 'extra-bytes'
		| 'colour-unreadable';
	message: string;
}
