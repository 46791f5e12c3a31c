import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import type { RawTriangles } from './readScan';
import { fromGeometry } from './fromGeometry';

/** Reads binary or text STL. Throws for a damaged file. */
export function readStl(bytes: Uint8Array): RawTriangles {
	return fromGeometry(new STLLoader().parse(bytes.slice().buffer));
}
