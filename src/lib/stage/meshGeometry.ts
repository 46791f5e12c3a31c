/** Drawable geometry of a mesh made in the browser, which can be bent into another of the same topology. */
import { BufferAttribute, BufferGeometry } from 'three';
import { REGIONS, regionIndex, type TriMesh } from '../domain/mesh/triMesh';
import { centreLine } from './centreLine';
import { crests } from './crests';
import { enamelRim } from './enamelRim';
import { looksClosed, type LoadedShape } from './loadShape';
import { places } from './places';
import { surfaceTone } from './surfaceTone';

/** A loaded shape that knows which mesh it was made of. */
export interface MeshGeometry extends LoadedShape {
	/** vertex of the mesh behind each vertex drawn: borders of regions stand there once for each region */
	readonly source: Uint32Array;
	/** number of the normal that a drawn vertex shares; creases run between facets and the rest */
	readonly shares: Uint32Array;
	readonly shareCount: number;
	mesh: TriMesh;
}

/** Regions whose border is a crease: a worn facet, a broken face and the cavity's rim have edges, enamel on root has none. */
const CREASE_CLASS: readonly number[] = REGIONS.map((region) =>
	region === 'facet' ? 1 : region === 'dentine' ? 2 : region === 'pulp' || region === 'pit' ? 3 : 0,
);

/** Whether the second mesh is the first one bent: the same triangles of the same regions. */
export const sameTopology = (a: TriMesh, b: TriMesh): boolean =>
	a.positions.length === b.positions.length &&
	sameNumbers(a.indices, b.indices) &&
	(a.regions === b.regions || (!!a.regions && !!b.regions && sameNumbers(a.regions, b.regions)));

const sameNumbers = (a: Uint32Array | Uint8Array, b: Uint32Array | Uint8Array): boolean => {
	if (a === b) return true;
	if (a.length !== b.length) return false;
	for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
	return true;
};

/** Area-weighted unit normals, one for each share. */
const fillNormals = (shape: MeshGeometry): void => {
	const position = shape.full.getAttribute('position').array as Float32Array;
	const normal = shape.full.getAttribute('normal').array as Float32Array;
	const index = shape.full.index!.array;
	const { shares } = shape;
	const sums = new Float32Array(3 * shape.shareCount);
	for (let k = 0; k < index.length; k += 3) {
		const [a, b, c] = [index[k] * 3, index[k + 1] * 3, index[k + 2] * 3];
		const ux = position[b] - position[a];
		const uy = position[b + 1] - position[a + 1];
		const uz = position[b + 2] - position[a + 2];
		const vx = position[c] - position[a];
		const vy = position[c + 1] - position[a + 1];
		const vz = position[c + 2] - position[a + 2];
		const x = uy * vz - uz * vy;
		const y = uz * vx - ux * vz;
		const z = ux * vy - uy * vx;
		for (let corner = 0; corner < 3; corner++) {
			const at = shares[index[k + corner]] * 3;
			sums[at] += x;
			sums[at + 1] += y;
			sums[at + 2] += z;
		}
	}
	for (let i = 0; i < shares.length; i++) {
		const at = shares[i] * 3;
		const length = Math.sqrt(sums[at] ** 2 + sums[at + 1] ** 2 + sums[at + 2] ** 2);
		const by = length > 0 ? 1 / length : 0;
		normal[i * 3] = sums[at] * by;
		normal[i * 3 + 1] = length > 0 ? sums[at + 1] * by : 1;
		normal[i * 3 + 2] = sums[at + 2] * by;
	}
};

const fillOpenness = (shape: MeshGeometry, occlusion: ArrayLike<number> | undefined): void => {
	const surface = shape.full.getAttribute('surface').array as Uint8Array;
	for (let i = 0; i < shape.source.length; i++) {
		const open = occlusion ? occlusion[shape.source[i]] : 1;
		surface[i * 4] = Math.round(255 * Math.min(1, Math.max(0, open)));
	}
};

/**
 * Geometry in the mesh's own frame (mm).
 *
 * @param occlusion openness to the light per vertex of the mesh, 0 shut in .. 1 open; left out = all open
 */
export const meshGeometry = (mesh: TriMesh, occlusion?: ArrayLike<number>): MeshGeometry => {
	const triangles = mesh.indices.length / 3;
	const plain = regionIndex('enamel');
	const drawn = new Map<number, number>();
	const shared = new Map<number, number>();
	const source: number[] = [];
	const shares: number[] = [];
	const regions: number[] = [];
	const index = new Uint32Array(mesh.indices.length);
	for (let t = 0; t < triangles; t++) {
		const region = mesh.regions ? mesh.regions[t] : plain;
		for (let k = t * 3; k < t * 3 + 3; k++) {
			const vertex = mesh.indices[k];
			const key = vertex * REGIONS.length + region;
			let own = drawn.get(key);
			if (own === undefined) {
				own = source.length;
				drawn.set(key, own);
				source.push(vertex);
				regions.push(region);
				const smooth = vertex * REGIONS.length + CREASE_CLASS[region];
				if (!shared.has(smooth)) shared.set(smooth, shared.size);
				shares.push(shared.get(smooth)!);
			}
			index[k] = own;
		}
	}
	const count = source.length;
	const positions = new Float32Array(count * 3);
	for (let i = 0; i < count; i++)
		positions.set(mesh.positions.subarray(source[i] * 3, source[i] * 3 + 3), i * 3);
	const surface = new Uint8Array(count * 4);
	for (let i = 0; i < count; i++) surface[i * 4 + 2] = regions[i];
	surfaceTone(positions, surface);
	const together = places(positions);
	enamelRim(positions, surface, together);
	const geometry = new BufferGeometry();
	geometry.setIndex(new BufferAttribute(index, 1));
	geometry.setAttribute('position', new BufferAttribute(positions, 3));
	geometry.setAttribute('normal', new BufferAttribute(new Float32Array(count * 3), 3));
	geometry.setAttribute('surface', new BufferAttribute(surface, 4));
	geometry.setAttribute('crest', new BufferAttribute(crests(regions, together, index), 2, true));
	const shape: MeshGeometry = {
		full: geometry,
		light: geometry,
		closed: looksClosed(positions, index),
		centreLine: centreLine(positions),
		source: Uint32Array.from(source),
		shares: Uint32Array.from(shares),
		shareCount: shared.size,
		mesh,
	};
	fillNormals(shape);
	fillOpenness(shape, occlusion);
	return shape;
};

/** Bends a geometry into a mesh of the same topology: only positions, normals and, where given, light are sent again. */
export const bendGeometry = (shape: MeshGeometry, mesh: TriMesh, occlusion?: ArrayLike<number>): void => {
	const position = shape.full.getAttribute('position') as BufferAttribute;
	const array = position.array as Float32Array;
	const { source } = shape;
	for (let i = 0; i < source.length; i++) {
		const from = source[i] * 3;
		array[i * 3] = mesh.positions[from];
		array[i * 3 + 1] = mesh.positions[from + 1];
		array[i * 3 + 2] = mesh.positions[from + 2];
	}
	position.needsUpdate = true;
	fillNormals(shape);
	shape.full.getAttribute('normal').needsUpdate = true;
	if (occlusion) {
		fillOpenness(shape, occlusion);
		shape.full.getAttribute('surface').needsUpdate = true;
	}
	shape.full.boundingSphere = null;
	shape.full.boundingBox = null;
	shape.centreLine = centreLine(array);
	shape.mesh = mesh;
};
