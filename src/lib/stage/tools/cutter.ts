/** Sections of the shapes that the stage holds, from the very triangles that are drawn. */
import type { BufferGeometry } from 'three';
import { cutSection, type Cutter } from '../../domain/measure/cutSection';
import type { TriMesh } from '../../domain/mesh/triMesh';
import { weld } from '../../domain/mesh/weld';

const made = new WeakMap<BufferGeometry, Cutter>();

/** The triangles of a geometry, corners that lie together made one. */
export const weldedOf = (geometry: BufferGeometry): TriMesh => {
	const positions = geometry.getAttribute('position').array as Float32Array;
	const { index } = geometry;
	return weld({
		positions,
		indices: index
			? Uint32Array.from(index.array)
			: Uint32Array.from({ length: positions.length / 3 }, (_, i) => i),
	});
};

/** The cutter of a geometry, made at the first cut and let go together with the geometry. */
export const cutterOf = (geometry: BufferGeometry): Cutter => {
	let cutter = made.get(geometry);
	if (!cutter) {
		cutter = cutSection(weldedOf(geometry));
		made.set(geometry, cutter);
	}
	return cutter;
};
