import type { BufferGeometry } from 'three';
import type { RawTriangles } from './readScan';

/** The triangles of a loader's geometry. */
export function fromGeometry(geometry: BufferGeometry): RawTriangles {
	const position = geometry.getAttribute('position');
	if (!position) return { positions: new Float32Array(0), indices: null };
	const index = geometry.getIndex();
	return {
		positions: Float32Array.from(position.array),
		indices: index ? Uint32Array.from(index.array) : null,
	};
}
