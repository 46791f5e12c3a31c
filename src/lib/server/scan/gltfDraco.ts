import { createDecoderModule, type DecoderModule, type Mesh } from 'draco3dgltf';
import type { Budget, ViewBytes } from './gltfBuffers';
import { fields, whole, type Fields } from './gltfTypes';
import { LIMITS } from './limits';
import { ScanFault } from './scanProblem';

export interface DracoPart {
	positions: Float32Array;
	indices: Uint32Array;
	/** numbers per corner, in the file's own type */
	colours: { values: Float32Array; width: number } | null;
	/** two numbers per corner */
	uv: Float32Array | null;
}

interface DracoAccessors {
	position: Fields;
	colour: Fields | null;
	/** places on a picture, with the name of their attribute */
	uv?: { name: string; accessor: Fields } | null;
}

/** More triangles than this per packed byte are no scan: the densest real meshes have 2 to 4. */
const MOST_PER_BYTE = 1000;

/** The unpacker; made anew after a fault, because a broken-off one may be left in any state. */
let module: Promise<DecoderModule> | null = null;

/** Unpacks a primitive of KHR_draco_mesh_compression. Throws ScanFault. */
export async function gltfDraco(
	packed: Fields,
	accessors: DracoAccessors,
	view: ViewBytes,
	budget: Budget,
): Promise<DracoPart> {
	const { bytes } = await view(packed.bufferView);
	const ids = fields(packed.attributes) ?? {};
	const announced = dracoCounts(bytes);
	const points = Math.max(announced?.points ?? 0, whole(accessors.position.count, 'a count'));
	const faces = announced?.faces ?? 0;
	if (faces > LIMITS.triangles || points > LIMITS.vertices) {
		throw new ScanFault('too-large', 'Unpacked, it is larger than can be read.');
	}
	if (faces > MOST_PER_BYTE * bytes.length || points > MOST_PER_BYTE * bytes.length) {
		throw new ScanFault(
			'count-lies',
			`A packed part of ${bytes.length} bytes announces ${faces} triangles and ${points} points, which it cannot hold.`,
		);
	}
	budget.spend(points * 24 + faces * 12);
	const draco = await (module ??= createDecoderModule({ print: quiet, printErr: quiet }));
	try {
		return decode(draco, bytes, ids, accessors, budget);
	} catch (cause) {
		module = null;
		if (cause instanceof ScanFault) throw cause;
		throw new ScanFault('compressed-unreadable', 'A packed part of it is damaged and cannot be unpacked.');
	}
}

const quiet = (): void => undefined;

function decode(
	draco: DecoderModule,
	bytes: Uint8Array,
	ids: Fields,
	accessors: DracoAccessors,
	budget: Budget,
): DracoPart {
	const decoder = new draco.Decoder();
	const buffer = new draco.DecoderBuffer();
	const mesh = new draco.Mesh();
	try {
		buffer.Init(new Int8Array(bytes.buffer, bytes.byteOffset, bytes.length), bytes.length);
		if (decoder.GetEncodedGeometryType(buffer) !== draco.TRIANGULAR_MESH) {
			throw new ScanFault('no-triangles', 'A packed part of it has points only, no triangles.');
		}
		if (!decoder.DecodeBufferToMesh(buffer, mesh).ok() || mesh.ptr === 0) {
			throw new ScanFault('compressed-unreadable', 'A packed part of it is damaged and cannot be unpacked.');
		}
		const faces = mesh.num_faces();
		const points = mesh.num_points();
		budget.spend(faces * 12 + points * 12);
		const values = (id: unknown, accessor: Fields, width: number) =>
			attribute(draco, mesh, whole(id, "a packed attribute's number"), accessor, width);
		const size = faces * 12;
		const pointer = draco._malloc(size);
		decoder.GetTrianglesUInt32Array(mesh, size, pointer);
		const indices = draco.HEAPU32.slice(pointer >> 2, (pointer >> 2) + faces * 3);
		draco._free(pointer);
		const colourWidth = accessors.colour?.type === 'VEC4' ? 4 : 3;
		return {
			positions: values(ids.POSITION, accessors.position, 3),
			indices,
			colours:
				accessors.colour && ids.COLOR_0 !== undefined
					? { values: values(ids.COLOR_0, accessors.colour, colourWidth), width: colourWidth }
					: null,
			uv:
				accessors.uv && ids[accessors.uv.name] !== undefined
					? values(ids[accessors.uv.name], accessors.uv.accessor, 2)
					: null,
		};
	} finally {
		for (const object of [mesh, buffer, decoder]) draco.destroy(object);
	}
}

function attribute(
	draco: DecoderModule,
	mesh: Mesh,
	id: number,
	accessor: Fields,
	width: number,
): Float32Array {
	const decoder = new draco.Decoder();
	try {
		const found = decoder.GetAttributeByUniqueId(mesh, id);
		if (!(found as { ptr?: number }).ptr || found.num_components() !== width) {
			throw new ScanFault('damaged', 'Its description does not agree with its packed part.');
		}
		const [type, bytes, one] = (
			{
				5120: [draco.DT_INT8, 1, 127],
				5121: [draco.DT_UINT8, 1, 255],
				5122: [draco.DT_INT16, 2, 32767],
				5123: [draco.DT_UINT16, 2, 65535],
			} as const
		)[accessor.componentType as number] ?? [draco.DT_FLOAT32, 4, 1];
		const count = mesh.num_points() * width;
		const pointer = draco._malloc(count * bytes);
		decoder.GetAttributeDataArrayForAllPoints(mesh, found, type, count * bytes, pointer);
		const heap = {
			5120: draco.HEAP8,
			5121: draco.HEAPU8,
			5122: draco.HEAP16,
			5123: draco.HEAPU16,
		}[accessor.componentType as number];
		const from = pointer / bytes;
		const values = heap
			? Float32Array.from(heap.subarray(from, from + count))
			: draco.HEAPF32.slice(from, from + count);
		draco._free(pointer);
		if (accessor.normalized === true && one !== 1) {
			for (let i = 0; i < count; i++) values[i] = Math.max(-1, values[i] / one);
		}
		return values;
	} finally {
		draco.destroy(decoder);
	}
}

/**
 * Numbers of triangles and points that a Draco mesh announces in its head (Draco bitstream specification, sections
 * "Draco Header", "Sequential Connectivity Header", "Edgebreaker Connectivity Header"); null where it
 * has to be unpacked to know. Throws ScanFault for something else.
 */
function dracoCounts(bytes: Uint8Array): { faces: number; points: number } | null {
	if (new TextDecoder('latin1').decode(bytes.subarray(0, 5)) !== 'DRACO' || bytes.length < 11) {
		throw new ScanFault('compressed-unreadable', 'A packed part of it does not begin as it should.');
	}
	const [major, minor] = [bytes[5], bytes[6]];
	const described = (bytes[10] & 0x80) !== 0; // metadata of unknown length come first
	if (described || major * 256 + minor < 0x202 || bytes[7] !== 1) return null;
	let at = 11;
	const varint = (): number => {
		let value = 0;
		for (let shift = 1; at < bytes.length; shift *= 128) {
			const byte = bytes[at++];
			value += (byte & 127) * shift;
			if (byte < 128 || shift > 2 ** 42) break;
		}
		return value;
	};
	if (bytes[8] === 0) {
		const faces = varint();
		return { faces, points: varint() };
	}
	at++; // kind of traversal
	const points = varint();
	return { faces: varint(), points };
}
