import { Document, Logger, NodeIO, type TypedArray } from '@gltf-transform/core';
import { EXTMeshoptCompression, KHRMeshQuantization } from '@gltf-transform/extensions';
import { reorder } from '@gltf-transform/functions';
import { MeshoptEncoder } from 'meshoptimizer';
import { decoded } from '../scan/paint';
import type { ShapeLevel } from './shapeLevel';

/** Positions are rounded to this many steps over the longest side: under a micrometre for a tooth of 50 mm. */
const POSITION_STEPS = 2 ** 17;

/**
 * Writes a prepared shape as GLB (glTF 2.0, units: mm, tooth frame): one node and mesh a level,
 * `level-0` the full one, `level-1` the light one. Attributes: POSITION float, NORMAL 16-bit
 * normalised, `_AO` 8-bit normalised (1 = open to the light), `_REGION` 8-bit index into REGIONS, and COLOR_0 16-bit
 * normalised, in linear light, where the scan has colours of its own.
 * Compressed with EXT_meshopt_compression, triangles in an order that a graphics card likes.
 */
export async function writeGlb(levels: readonly ShapeLevel[]): Promise<Uint8Array> {
	await MeshoptEncoder.ready;
	const doc = new Document();
	const buffer = doc.createBuffer();
	const scene = doc.createScene('tooth');
	doc.getRoot().setDefaultScene(scene);
	const material = doc.createMaterial('tooth').setRoughnessFactor(0.5).setMetallicFactor(0);

	levels.forEach((level, number) => {
		const name = `level-${number}`;
		const accessor = (
			type: 'SCALAR' | 'VEC3',
			array: Float32Array | Int16Array | Uint8Array | Uint16Array | Uint32Array,
			normalised: boolean,
		) =>
			doc
				.createAccessor()
				.setType(type)
				.setArray(array as TypedArray)
				.setNormalized(normalised)
				.setBuffer(buffer);
		const primitive = doc
			.createPrimitive()
			.setMaterial(material)
			.setIndices(accessor('SCALAR', level.indices, false))
			.setAttribute('POSITION', accessor('VEC3', roundPositions(level.positions), false))
			.setAttribute('NORMAL', accessor('VEC3', toInt16(level.normals), true))
			.setAttribute('_AO', accessor('SCALAR', level.openness, true))
			.setAttribute('_REGION', accessor('SCALAR', level.regions, false));
		if (level.colours) primitive.setAttribute('COLOR_0', accessor('VEC3', linear(level.colours), true));
		scene.addChild(doc.createNode(name).setMesh(doc.createMesh(name).addPrimitive(primitive)));
	});

	doc.setLogger(new Logger(Logger.Verbosity.SILENT));
	await doc.transform(reorder({ encoder: MeshoptEncoder, target: 'size' }));
	doc.createExtension(KHRMeshQuantization).setRequired(true);
	doc
		.createExtension(EXTMeshoptCompression)
		.setRequired(true)
		.setEncoderOptions({ method: EXTMeshoptCompression.EncoderMethod.QUANTIZE });
	const io = new NodeIO()
		.registerExtensions([EXTMeshoptCompression, KHRMeshQuantization])
		.registerDependencies({ 'meshopt.encoder': MeshoptEncoder });
	return io.writeBinary(doc);
}

/** Positions on a fine grid, which compress far better than raw ones. */
function roundPositions(positions: Float32Array): Float32Array {
	let largest = 0;
	for (const value of positions) largest = Math.max(largest, Math.abs(value));
	if (largest === 0) return positions;
	// a power of two keeps the grid's values exact in a float
	const step = 2 ** Math.ceil(Math.log2((2 * largest) / POSITION_STEPS));
	return positions.map((value) => Math.round(value / step) * step);
}

/** 8 bits in linear light would leave dark enamel a handful of steps. */
function linear(colours: Uint8Array): Uint16Array {
	const steps = Uint16Array.from({ length: 256 }, (_, value) => Math.round(decoded(value) * 65535));
	return Uint16Array.from(colours, (value) => steps[value]);
}

function toInt16(normals: Float32Array): Int16Array {
	const rounded = new Int16Array(normals.length);
	for (let i = 0; i < normals.length; i++)
		rounded[i] = Math.round(Math.max(-1, Math.min(1, normals[i])) * 32767);
	return rounded;
}
