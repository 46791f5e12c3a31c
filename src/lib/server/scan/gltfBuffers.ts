import { MeshoptDecoder } from 'meshoptimizer/decoder';
import { base64 } from './base64';
import { entry, extension, list, whole, type Fields, type Gltf } from './gltfTypes';
import { LIMITS } from './limits';
import { ScanFault } from './scanProblem';

/** Fetches a file that lies beside the scan; null when it is not there. */
export type Sibling = (uri: string) => Promise<Uint8Array | null>;

/** Bytes of a bufferView, unpacked, each fetched once. */
export type ViewBytes = (index: unknown) => Promise<{ bytes: Uint8Array; stride: number | null }>;

/** Counts what is unpacked, so that a small file cannot fill the memory. */
export class Budget {
	private spent = 0;
	spend(bytes: number): void {
		this.spent += bytes;
		if (!(this.spent <= LIMITS.unpackedBytes)) {
			throw new ScanFault('too-large', 'Unpacked, it is larger than can be read.');
		}
	}
}

const MODES = ['ATTRIBUTES', 'TRIANGLES', 'INDICES'] as const;
const FILTERS = ['NONE', 'OCTAHEDRAL', 'QUATERNION', 'EXPONENTIAL', 'COLOR'];

/** Access to a glTF's data. What no triangle needs (pictures, animations) is never fetched. */
export function gltfBuffers(
	json: Gltf,
	binary: Uint8Array | null,
	budget: Budget,
	sibling?: Sibling,
): ViewBytes {
	const buffers = list(json.buffers, 'buffers');
	const views = list(json.bufferViews, 'bufferViews');
	const fetched = new Map<number, Promise<Uint8Array>>();
	const opened = new Map<number, ReturnType<ViewBytes>>();

	const bufferBytes = (index: unknown): Promise<Uint8Array> => {
		const buffer = entry(buffers, index, 'buffer');
		let bytes = fetched.get(index as number);
		if (!bytes)
			fetched.set(index as number, (bytes = fetchBuffer(buffer, index === 0 ? binary : null, sibling)));
		return bytes;
	};
	const slice = async (view: Fields): Promise<Uint8Array> => {
		const bytes = await bufferBytes(view.buffer);
		const from = whole(view.byteOffset, 'a byteOffset', 0);
		const length = whole(view.byteLength, 'a byteLength');
		if (from + length > bytes.length) {
			throw new ScanFault(
				'count-lies',
				`Its description names bytes up to ${from + length}, but there are ${bytes.length}.`,
			);
		}
		return bytes.subarray(from, from + length);
	};
	const open: ViewBytes = async (index) => {
		const view = entry(views, index, 'bufferView');
		const packed = extension(view, 'EXT_meshopt_compression', 'KHR_meshopt_compression');
		if (packed) return unpack(packed, await slice(packed), budget);
		const stride = view.byteStride === undefined ? null : whole(view.byteStride, 'a byteStride');
		return { bytes: await slice(view), stride };
	};
	return (index) => {
		let view = opened.get(index as number);
		if (!view) opened.set(index as number, (view = open(index)));
		return view;
	};
}

async function fetchBuffer(
	buffer: Fields,
	binary: Uint8Array | null,
	sibling: Sibling | undefined,
): Promise<Uint8Array> {
	const { uri } = buffer;
	const length = whole(buffer.byteLength, "a buffer's byteLength");
	let bytes: Uint8Array | null;
	if (uri === undefined) {
		if (!binary) throw new ScanFault('truncated', 'The part with its data is missing.');
		bytes = binary;
	} else if (typeof uri !== 'string')
		throw new ScanFault('damaged', 'The name of a file it needs is no text.');
	else if (uri.startsWith('data:')) {
		bytes = withinText(uri);
	} else bytes = await beside(uri, sibling);
	if (bytes.length < length) {
		throw new ScanFault('truncated', `Its data should have ${length} bytes, but have ${bytes.length}.`);
	}
	return bytes.subarray(0, length);
}

/** Bytes that a glTF holds in its own text. */
export function withinText(uri: string): Uint8Array {
	const comma = uri.indexOf(',');
	if (!/;base64$/.test(uri.slice(0, Math.max(0, comma)).slice(-20))) {
		throw new ScanFault('damaged', 'Data within its description are not written as base64.');
	}
	return base64(uri, comma + 1);
}

/** Bytes of a file that a glTF names. Throws ScanFault when it is not there or lies outside the scan's folder. */
export async function beside(uri: string, sibling: Sibling | undefined): Promise<Uint8Array> {
	let name: string;
	try {
		name = decodeURIComponent(uri);
	} catch {
		name = uri;
	}
	// a plain name in the same folder or one below; never a place elsewhere on the disk or the network
	const outside = /^[a-z][a-z0-9+.-]*:|^[\\/]|\\|\0/i.test(name) || name.split('/').includes('..');
	const bytes = outside || !sibling ? null : await sibling(name);
	const shown = name.slice(0, 80);
	if (!bytes) {
		throw new ScanFault(
			'external-file-missing',
			outside
				? `It needs a file outside its own folder, "${shown}", which is not opened.`
				: `It needs the file "${shown}" beside it, which is not there.`,
		);
	}
	if (bytes.length > LIMITS.fileBytes) {
		throw new ScanFault('too-large', `The file "${shown}" that it needs is too large.`);
	}
	return bytes;
}

/** Unpacks a bufferView of EXT_meshopt_compression, once its announced size is one that its bytes could hold. */
async function unpack(
	packed: Fields,
	source: Uint8Array,
	budget: Budget,
): Promise<{ bytes: Uint8Array; stride: number }> {
	const count = whole(packed.count, 'a count');
	const stride = whole(packed.byteStride, 'a byteStride');
	const mode = MODES.find((known) => known === packed.mode);
	const filter = packed.filter === undefined ? 'NONE' : String(packed.filter);
	if (!mode || !FILTERS.includes(filter)) {
		throw new ScanFault('compressed-unreadable', 'It is packed in a way that is not known.');
	}
	const fits =
		mode === 'ATTRIBUTES' ? stride > 0 && stride <= 256 && stride % 4 === 0 : stride === 2 || stride === 4;
	// least bytes of the codec: one per triangle or index, 4 per 256 values of one byte column, or none if all are 0
	const most =
		mode === 'ATTRIBUTES' ? source.length * 1024 : mode === 'TRIANGLES' ? source.length * 3 : source.length;
	if (!fits || (mode === 'TRIANGLES' && count % 3 !== 0) || count > most) {
		throw new ScanFault(
			'count-lies',
			`A packed part of ${source.length} bytes announces ${count} entries of ${stride} bytes, which it cannot hold.`,
		);
	}
	budget.spend(count * stride);
	await MeshoptDecoder.ready;
	const bytes = new Uint8Array(count * stride);
	try {
		MeshoptDecoder.decodeGltfBuffer(bytes, count, stride, source, mode, filter);
	} catch {
		throw new ScanFault('compressed-unreadable', 'A packed part of it is damaged and cannot be unpacked.');
	}
	return { bytes, stride };
}
