import { NodeIO, Primitive, type JSONDocument, type mat4, type Node } from '@gltf-transform/core';
import { EXTMeshoptCompression, KHRMeshQuantization } from '@gltf-transform/extensions';
import { convertPrimitiveToTriangles } from '@gltf-transform/functions';
import { MeshoptDecoder } from 'meshoptimizer';
import { fail, ok, type Result } from '../../domain/result';
import type { RawTriangles, ScanProblem } from './readScan';

const KNOWN = new Set(['EXT_meshopt_compression', 'KHR_mesh_quantization']);
/** Extensions that change how triangles are stored; others (materials, textures) do not matter here. */
const PACKED = /draco|compression|quantization/i;

/**
 * Reads the triangles of a GLB, or of a glTF whose data stand in the file itself, with node
 * transforms applied. Throws for a damaged file.
 */
export async function readGltf(
	bytes: Uint8Array,
	format: 'glb' | 'gltf',
): Promise<Result<RawTriangles, ScanProblem>> {
	await MeshoptDecoder.ready;
	const io = new NodeIO()
		.registerExtensions([EXTMeshoptCompression, KHRMeshQuantization])
		.registerDependencies({ 'meshopt.decoder': MeshoptDecoder });
	const json = format === 'glb' ? await io.binaryToJSON(bytes) : inlineJson(bytes);
	const packed = json.json.extensionsRequired?.find((name) => PACKED.test(name) && !KNOWN.has(name));
	if (packed) return fail({ code: 'compressed', detail: packed });
	const doc = await io.readJSON(json);

	const scene = doc.getRoot().getDefaultScene() ?? doc.getRoot().listScenes()[0];
	const parts: { positions: Float32Array; indices: Uint32Array }[] = [];
	scene?.traverse((node: Node) => {
		for (const primitive of node.getMesh()?.listPrimitives() ?? []) {
			if (primitive.getMode() < Primitive.Mode.TRIANGLES) continue; // points and lines
			if (primitive.getMode() !== Primitive.Mode.TRIANGLES) convertPrimitiveToTriangles(primitive);
			const part = primitiveInWorld(primitive, node.getWorldMatrix());
			if (part) parts.push(part);
		}
	});
	return ok(joined(parts));
}

function joined(parts: readonly { positions: Float32Array; indices: Uint32Array }[]): RawTriangles {
	const positions = new Float32Array(parts.reduce((sum, part) => sum + part.positions.length, 0));
	const indices = new Uint32Array(parts.reduce((sum, part) => sum + part.indices.length, 0));
	let value = 0;
	let corner = 0;
	for (const part of parts) {
		positions.set(part.positions, value);
		for (let i = 0; i < part.indices.length; i++) indices[corner + i] = part.indices[i] + value / 3;
		value += part.positions.length;
		corner += part.indices.length;
	}
	return { positions, indices };
}

function primitiveInWorld(
	primitive: Primitive,
	m: mat4,
): { positions: Float32Array; indices: Uint32Array } | null {
	const position = primitive.getAttribute('POSITION');
	if (!position) return null;
	const count = position.getCount();
	const positions = new Float32Array(count * 3);
	const p: number[] = [];
	for (let i = 0; i < count; i++) {
		const [x, y, z] = position.getElement(i, p);
		positions[i * 3] = m[0] * x + m[4] * y + m[8] * z + m[12];
		positions[i * 3 + 1] = m[1] * x + m[5] * y + m[9] * z + m[13];
		positions[i * 3 + 2] = m[2] * x + m[6] * y + m[10] * z + m[14];
	}
	const order = primitive.getIndices()?.getArray();
	const all = order ? Uint32Array.from(order) : Uint32Array.from({ length: count }, (_, i) => i);
	const indices = all.subarray(0, all.length - (all.length % 3));
	const mirrored =
		m[0] * (m[5] * m[10] - m[6] * m[9]) -
			m[4] * (m[1] * m[10] - m[2] * m[9]) +
			m[8] * (m[1] * m[6] - m[2] * m[5]) <
		0;
	if (mirrored) {
		for (let i = 0; i < indices.length; i += 3) [indices[i], indices[i + 1]] = [indices[i + 1], indices[i]];
	}
	return { positions, indices };
}

/** A .gltf with everything inside; one that names other files is refused. */
function inlineJson(bytes: Uint8Array): JSONDocument {
	const json = JSON.parse(new TextDecoder().decode(bytes)) as JSONDocument['json'];
	const resources: JSONDocument['resources'] = {};
	for (const { uri } of [...(json.buffers ?? []), ...(json.images ?? [])]) {
		if (uri !== undefined && !uri.startsWith('data:')) {
			throw new Error(`the file needs another file, ${uri}; save it as GLB, which holds everything`);
		}
	}
	return { json, resources };
}
