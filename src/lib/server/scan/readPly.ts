import { PLYLoader } from 'three/examples/jsm/loaders/PLYLoader.js';
import type { RawTriangles } from './readScan';
import { fromGeometry } from './fromGeometry';

/** Reads binary or text PLY; a file of points only has no triangles. Throws for a damaged file. */
export function readPly(bytes: Uint8Array): RawTriangles {
	const head = new TextDecoder('latin1').decode(bytes.subarray(0, 3));
	if (head !== 'ply') throw new Error('the file does not begin with "ply"');
	const geometry = new PLYLoader().parse(bytes.slice().buffer);
	if (!geometry.index) return { positions: new Float32Array(0), indices: null };
	return fromGeometry(geometry);
}
