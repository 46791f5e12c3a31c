/** Reads a prepared GLB into the geometry that the stage draws. */
import { BufferAttribute, BufferGeometry, Vector3, type Mesh, type Object3D } from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { MeshoptDecoder } from 'three/examples/jsm/libs/meshopt_decoder.module.js';
import { centreLine, type CentreLine } from './centreLine';
import { surfaceTone } from './surfaceTone';

export interface LoadedShape {
	/** level-0: every triangle, for a tooth at rest */
	full: BufferGeometry;
	/** level-1: the light version for a tooth in motion; the same object as `full` where the file has one level only */
	light: BufferGeometry;
	/** what the contact shadow is made of */
	centreLine: CentreLine;
}

/**
 * Geometry in the tooth frame (mm): `position` and `normal` as floats, `surface` as four bytes
 * (ambient occlusion, tone, region, unused). Quantised positions are undone and node matrices applied.
 */
const bake = (mesh: Mesh): BufferGeometry => {
	mesh.updateWorldMatrix(true, false);
	const source = mesh.geometry;
	const position = source.getAttribute('position');
	const count = position.count;
	const positions = new Float32Array(count * 3);
	const v = new Vector3();
	for (let i = 0; i < count; i++) {
		v.fromBufferAttribute(position, i)
			.applyMatrix4(mesh.matrixWorld)
			.toArray(positions, i * 3);
	}
	const geometry = new BufferGeometry();
	geometry.setAttribute('position', new BufferAttribute(positions, 3));
	if (source.index) geometry.setIndex(new BufferAttribute(source.index.array.slice(), 1));
	const normal = source.getAttribute('normal');
	if (normal) {
		const normals = new Float32Array(count * 3);
		for (let i = 0; i < count; i++) {
			v.fromBufferAttribute(normal, i)
				.transformDirection(mesh.matrixWorld)
				.toArray(normals, i * 3);
		}
		geometry.setAttribute('normal', new BufferAttribute(normals, 3));
	} else {
		geometry.computeVertexNormals();
	}
	const ao = source.getAttribute('_ao');
	const region = source.getAttribute('_region');
	const surface = new Uint8Array(count * 4);
	for (let i = 0; i < count; i++) {
		surface[i * 4] = Math.round(255 * Math.min(1, Math.max(0, ao ? ao.getX(i) : 1)));
		surface[i * 4 + 2] = region ? Math.round(region.getX(i)) : 0;
	}
	surfaceTone(positions, surface);
	geometry.setAttribute('surface', new BufferAttribute(surface, 4));
	return geometry;
};

const firstMesh = (root: Object3D | undefined): Mesh | null => {
	let found: Mesh | null = null;
	root?.traverse((node) => {
		if (!found && (node as Mesh).isMesh) found = node as Mesh;
	});
	return found;
};

/** Makes drawable geometry of a GLB's bytes. Throws `loadShape: ...` when it holds no mesh. */
export const parseShape = async (glb: ArrayBuffer): Promise<LoadedShape> => {
	await MeshoptDecoder.ready;
	const gltf = await new GLTFLoader().setMeshoptDecoder(MeshoptDecoder).parseAsync(glb, '');
	const fullMesh = firstMesh(gltf.scene.getObjectByName('level-0') ?? gltf.scene);
	if (!fullMesh) throw new Error('loadShape: the file holds no mesh');
	const lightMesh = firstMesh(gltf.scene.getObjectByName('level-1'));
	const full = bake(fullMesh);
	const light = lightMesh ? bake(lightMesh) : full;
	return { full, light, centreLine: centreLine(light.getAttribute('position').array as Float32Array) };
};

/** Fetches and reads a prepared shape. Rejects with `loadShape: ...` when the address gives no file. */
export const loadShape = async (url: string): Promise<LoadedShape> => {
	const response = await fetch(url);
	if (!response.ok) throw new Error(`loadShape: ${url} answered ${response.status}`);
	return parseShape(await response.arrayBuffer());
};

/** Frees the graphics memory of both levels; the arrays stay, so that the shape can be drawn again. */
export const parkShape = ({ full, light }: LoadedShape): void => {
	full.dispose();
	light.dispose();
};
