/** Reads a prepared GLB into the geometry that the stage draws. */
import { BufferAttribute, BufferGeometry, Color, Vector3, type Mesh, type Object3D } from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { MeshoptDecoder } from 'three/examples/jsm/libs/meshopt_decoder.module.js';
import { centreLine, type CentreLine } from './centreLine';
import { crests } from './crests';
import { enamelRim } from './enamelRim';
import { places } from './places';
import { surfaceTone } from './surfaceTone';

export interface LoadedShape {
	/** level-0: every triangle, for a tooth at rest */
	full: BufferGeometry;
	/** level-1: the light version for a tooth in motion; the same object as `full` where the file has one level only */
	light: BufferGeometry;
	/** true when nothing can be seen of the surface's inner side */
	closed: boolean;
	/** what the contact shadow is made of */
	centreLine: CentreLine;
}

/** A hole larger than this share of the surface shows its inner side. */
const OPEN_SHARE = 2e-4;

/**
 * Geometry in the tooth frame (mm): `position` and `normal` as floats, `surface` as four bytes
 * (ambient occlusion, tone, region, nearness to an edge of the enamel), `crest` as two
 * (share of carina, of ridge), and `colour` as four (red, green, blue in the sRGB curve, 255) where the
 * scan has colours of its own. Quantised positions are undone and node matrices applied.
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
	const shared = places(positions);
	enamelRim(positions, surface, shared);
	geometry.setAttribute('surface', new BufferAttribute(surface, 4));
	const regions = Uint8Array.from({ length: count }, (_, i) => surface[i * 4 + 2]);
	const indices = geometry.index?.array ?? Uint32Array.from({ length: count }, (_, i) => i);
	geometry.setAttribute('crest', new BufferAttribute(crests(regions, shared, indices), 2, true));
	const own = source.getAttribute('color');
	if (own) {
		const colour = new Uint8Array(count * 4).fill(255);
		const tint = new Color();
		for (let i = 0; i < count; i++) {
			tint.setRGB(own.getX(i), own.getY(i), own.getZ(i)).convertLinearToSRGB();
			colour[i * 4] = Math.round(255 * tint.r);
			colour[i * 4 + 1] = Math.round(255 * tint.g);
			colour[i * 4 + 2] = Math.round(255 * tint.b);
		}
		geometry.setAttribute('colour', new BufferAttribute(colour, 4, true));
	}
	return geometry;
};

/** A closed surface's area vectors add up to nothing; an open one's add up to its hole's. */
export const looksClosed = (positions: ArrayLike<number>, index: ArrayLike<number> | null): boolean => {
	const [a, b, c, sum] = [new Vector3(), new Vector3(), new Vector3(), new Vector3()];
	let area = 0;
	const corners = index?.length ?? positions.length / 3;
	for (let i = 0; i + 2 < corners; i += 3) {
		a.fromArray(positions as number[], (index ? index[i] : i) * 3);
		b.fromArray(positions as number[], (index ? index[i + 1] : i + 1) * 3).sub(a);
		c.fromArray(positions as number[], (index ? index[i + 2] : i + 2) * 3).sub(a);
		b.cross(c);
		area += b.length();
		sum.add(b);
	}
	return area > 0 && sum.length() < OPEN_SHARE * area;
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
	const positions = light.getAttribute('position').array as Float32Array;
	return {
		full,
		light,
		closed: looksClosed(positions, light.index?.array ?? null),
		centreLine: centreLine(positions),
	};
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
