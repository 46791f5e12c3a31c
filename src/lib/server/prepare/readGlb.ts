import { NodeIO } from '@gltf-transform/core';
import { EXTMeshoptCompression, KHRMeshQuantization } from '@gltf-transform/extensions';
import { MeshoptDecoder } from 'meshoptimizer';
import { encoded } from '../scan/paint';
import type { ShapeLevel } from './shapeLevel';

/** Reads one level back from a GLB that `writeGlb` made. Throws for any other file. */
export async function readGlb(glb: Uint8Array, level: number): Promise<ShapeLevel> {
	await MeshoptDecoder.ready;
	const io = new NodeIO()
		.registerExtensions([EXTMeshoptCompression, KHRMeshQuantization])
		.registerDependencies({ 'meshopt.decoder': MeshoptDecoder });
	const doc = await io.readBinary(glb);
	const node = doc
		.getRoot()
		.listNodes()
		.find((candidate) => candidate.getName() === `level-${level}`);
	const primitive = node?.getMesh()?.listPrimitives()[0];
	const array = (semantic: string) => primitive?.getAttribute(semantic)?.getArray();
	const positions = array('POSITION');
	const normals = array('NORMAL');
	const openness = array('_AO');
	const regions = array('_REGION');
	const colours = array('COLOR_0');
	const indices = primitive?.getIndices()?.getArray();
	if (!positions || !normals || !openness || !regions || !indices) {
		throw new Error(`readGlb: the file has no complete level-${level}`);
	}
	return {
		positions: Float32Array.from(positions),
		normals: Float32Array.from(normals, (value) => Math.max(-1, value / 32767)),
		openness: Uint8Array.from(openness),
		regions: Uint8Array.from(regions),
		...(colours ? { colours: Uint8Array.from(colours, (value) => Math.round(encoded(value / 65535))) } : {}),
		indices: Uint32Array.from(indices),
	};
}
