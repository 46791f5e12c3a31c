import { Document, Logger, NodeIO, Primitive, type Accessor } from '@gltf-transform/core';
import {
	EXTMeshoptCompression,
	KHRDracoMeshCompression,
	KHRMeshQuantization,
} from '@gltf-transform/extensions';
import { quantize, reorder } from '@gltf-transform/functions';
import { createDecoderModule, createEncoderModule } from 'draco3dgltf';
import { MeshoptDecoder, MeshoptEncoder } from 'meshoptimizer';
import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';

/** Files written by another program's library, so that reader and writer cannot share a mistake. */
export async function gltfIo(): Promise<NodeIO> {
	await Promise.all([MeshoptDecoder.ready, MeshoptEncoder.ready]);
	return new NodeIO()
		.setLogger(new Logger(Logger.Verbosity.SILENT))
		.registerExtensions([EXTMeshoptCompression, KHRDracoMeshCompression, KHRMeshQuantization])
		.registerDependencies({
			'meshopt.decoder': MeshoptDecoder,
			'meshopt.encoder': MeshoptEncoder,
			'draco3d.encoder': await createEncoderModule(),
			'draco3d.decoder': await createDecoderModule(),
		});
}

export interface GltfPart {
	mesh: TriMesh;
	/** Primitive.Mode; default triangles */
	mode?: number;
	/** without indices, corners in order; default false */
	unindexed?: boolean;
	colours?: number[];
	sparse?: boolean;
}

/** A scene with all parts in one mesh, under `levels` nodes that each move, turn and mirror it. */
export function gltfDocument(parts: readonly GltfPart[], levels = 0): Document {
	const doc = new Document().setLogger(new Logger(Logger.Verbosity.SILENT));
	const buffer = doc.createBuffer();
	const accessor = (
		type: 'VEC3' | 'SCALAR',
		array: Float32Array<ArrayBuffer> | Uint32Array<ArrayBuffer>,
	): Accessor => doc.createAccessor().setType(type).setArray(array).setBuffer(buffer);
	const mesh = doc.createMesh();
	for (const part of parts) {
		const { positions, indices } = part.mesh;
		const spread = part.unindexed
			? Float32Array.from([...indices].flatMap((i) => [...positions.subarray(i * 3, i * 3 + 3)]))
			: positions;
		const primitive = doc
			.createPrimitive()
			.setMode((part.mode ?? Primitive.Mode.TRIANGLES) as 4)
			.setAttribute('POSITION', accessor('VEC3', Float32Array.from(spread)).setSparse(part.sparse ?? false));
		if (!part.unindexed) primitive.setIndices(accessor('SCALAR', Uint32Array.from(indices)));
		if (part.colours) primitive.setAttribute('COLOR_0', accessor('VEC3', Float32Array.from(part.colours)));
		mesh.addPrimitive(primitive);
	}
	let node = doc.createNode().setMesh(mesh);
	for (let i = 0; i < levels; i++) {
		node = doc
			.createNode()
			.addChild(node)
			.setTranslation([0.001 * i, 0.002, -0.003])
			.setRotation([0, Math.sin(0.3), 0, Math.cos(0.3)])
			.setScale([i % 2 === 0 ? -1 : 1, 1, 1]);
	}
	doc.getRoot().setDefaultScene(doc.createScene().addChild(node));
	return doc;
}

export async function glb(doc: Document): Promise<Uint8Array> {
	return (await gltfIo()).writeBinary(doc);
}

export async function dracoGlb(mesh: TriMesh, method: 'edgebreaker' | 'sequential'): Promise<Uint8Array> {
	const doc = gltfDocument([{ mesh }]);
	const methods = KHRDracoMeshCompression.EncoderMethod;
	doc
		.createExtension(KHRDracoMeshCompression)
		.setRequired(true)
		.setEncoderOptions({
			method: method === 'edgebreaker' ? methods.EDGEBREAKER : methods.SEQUENTIAL,
			quantizationBits: { POSITION: 16 },
		});
	return glb(doc);
}

export async function meshoptGlb(mesh: TriMesh, quantised: boolean): Promise<Uint8Array> {
	const doc = gltfDocument([{ mesh }]);
	await MeshoptEncoder.ready;
	await doc.transform(reorder({ encoder: MeshoptEncoder }));
	if (quantised) await doc.transform(quantize({ quantizePosition: 16 }));
	doc
		.createExtension(EXTMeshoptCompression)
		.setRequired(true)
		.setEncoderOptions({ method: EXTMeshoptCompression.EncoderMethod.QUANTIZE });
	return glb(doc);
}

export async function quantisedGlb(mesh: TriMesh): Promise<Uint8Array> {
	const doc = gltfDocument([{ mesh }]);
	await doc.transform(quantize({ quantizePosition: 16 }));
	return glb(doc);
}

/** A GLB put together by hand from its description and its data. */
export function glbOf(json: unknown, binary: Uint8Array = new Uint8Array(0)): Uint8Array {
	const words = new TextEncoder().encode(typeof json === 'string' ? json : JSON.stringify(json));
	const pad = (length: number): number => Math.ceil(length / 4) * 4;
	const total = 20 + pad(words.length) + 8 + pad(binary.length);
	const bytes = new Uint8Array(total).fill(32, 20, 20 + pad(words.length));
	const view = new DataView(bytes.buffer);
	bytes.set(new TextEncoder().encode('glTF'));
	view.setUint32(4, 2, true);
	view.setUint32(8, total, true);
	view.setUint32(12, pad(words.length), true);
	view.setUint32(16, 0x4e4f534a, true);
	bytes.set(words, 20);
	const at = 20 + pad(words.length);
	view.setUint32(at, pad(binary.length), true);
	view.setUint32(at + 4, 0x004e4942, true);
	bytes.set(binary, at + 8);
	return bytes;
}
