import type { ViewBytes } from './gltfBuffers';
import { entry, fields, list, whole, type Fields, type Gltf } from './gltfTypes';
import { LIMITS } from './limits';
import { ScanFault } from './scanProblem';
import type { Budget } from './gltfBuffers';

export interface AccessorValues {
	/** all values one after another; whole numbers that stand for fractions (`normalized`) already divided */
	values: Float32Array | Uint32Array;
	/** numbers per element */
	width: number;
	count: number;
}

/** Component types: bytes, reader, and the value that stands for 1 when normalised (specification, 3.6.2.2). */
const COMPONENTS: Readonly<
	Record<number, { size: number; one: number; read: (view: DataView, at: number) => number }>
> = {
	5120: { size: 1, one: 127, read: (view, at) => view.getInt8(at) },
	5121: { size: 1, one: 255, read: (view, at) => view.getUint8(at) },
	5122: { size: 2, one: 32767, read: (view, at) => view.getInt16(at, true) },
	5123: { size: 2, one: 65535, read: (view, at) => view.getUint16(at, true) },
	5125: { size: 4, one: 2 ** 32 - 1, read: (view, at) => view.getUint32(at, true) },
	5126: { size: 4, one: 1, read: (view, at) => view.getFloat32(at, true) },
};
const UINT = 5125;
const FLOAT = 5126;
const WIDTHS: Readonly<Record<string, number>> = { SCALAR: 1, VEC2: 2, VEC3: 3, VEC4: 4 };

export const wholeComponents = (type: unknown): boolean => type === 5121 || type === 5123 || type === UINT;

/** Reads an accessor with its sparse replacements, whatever its storage. Throws ScanFault. */
export async function gltfAccessor(
	json: Gltf,
	index: unknown,
	view: ViewBytes,
	budget: Budget,
	want: 'indices' | 'values',
): Promise<AccessorValues> {
	const accessor = entry(list(json.accessors, 'accessors'), index, 'accessor');
	const component = COMPONENTS[accessor.componentType as number];
	const width = WIDTHS[accessor.type as string];
	if (
		!component ||
		!width ||
		(want === 'indices' && !(width === 1 && wholeComponents(accessor.componentType)))
	) {
		throw new ScanFault('damaged', 'Its description is wrong: data of an unknown type.');
	}
	const count = whole(accessor.count, 'a count');
	if (count > LIMITS.vertices) throw new ScanFault('too-large', 'It announces more points than can be read.');
	const elementSize = component.size * width;
	let source: Uint8Array | null = null;
	let stride = elementSize;
	let from = 0;
	if (accessor.bufferView !== undefined) {
		const found = await view(accessor.bufferView);
		source = found.bytes;
		stride = found.stride ?? elementSize;
		from = whole(accessor.byteOffset, 'a byteOffset', 0);
		if (stride < elementSize) throw new ScanFault('damaged', 'Its description is wrong: data that overlap.');
		checkRoom(count, from, stride, elementSize, source);
	}
	budget.spend(count * width * 4);
	const values = want === 'indices' ? new Uint32Array(count) : new Float32Array(count * width);
	const divide = accessor.normalized === true && accessor.componentType !== FLOAT ? component.one : 1;
	const copy = (bytes: Uint8Array, at: number, to: number): void => {
		const data = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
		for (let c = 0; c < width; c++) {
			const value = component.read(data, at + c * component.size);
			values[to * width + c] = divide === 1 ? value : Math.max(-1, value / divide);
		}
	};
	if (source) {
		const data = new DataView(source.buffer, source.byteOffset, source.length);
		for (let i = 0, k = 0, at = from; i < count; i++, at += stride) {
			for (let c = 0; c < width; c++) {
				const value = component.read(data, at + c * component.size);
				values[k++] = divide === 1 ? value : Math.max(-1, value / divide);
			}
		}
	}
	const sparse = fields(accessor.sparse);
	if (sparse) await replace(sparse, count, elementSize, view, copy);
	return { values, width, count };
}

function checkRoom(
	count: number,
	from: number,
	stride: number,
	elementSize: number,
	source: Uint8Array,
): void {
	if (count > 0 && from + (count - 1) * stride + elementSize > source.length) {
		throw new ScanFault(
			'count-lies',
			`Its description announces ${count} values where the data have room for ${Math.max(0, Math.floor((source.length - from - elementSize) / stride) + 1)}.`,
		);
	}
}

async function replace(
	sparse: Fields,
	count: number,
	elementSize: number,
	view: ViewBytes,
	copy: (bytes: Uint8Array, at: number, to: number) => void,
): Promise<void> {
	const places = fields(sparse.indices) ?? {};
	const fresh = fields(sparse.values) ?? {};
	const replaced = whole(sparse.count, 'a sparse count');
	const component = COMPONENTS[places.componentType as number];
	if (!component || !wholeComponents(places.componentType)) {
		throw new ScanFault('damaged', 'Its description is wrong: places of an unknown type.');
	}
	const at = await view(places.bufferView);
	const values = await view(fresh.bufferView);
	const placesFrom = whole(places.byteOffset, 'a byteOffset', 0);
	const valuesFrom = whole(fresh.byteOffset, 'a byteOffset', 0);
	checkRoom(replaced, placesFrom, component.size, component.size, at.bytes);
	checkRoom(replaced, valuesFrom, elementSize, elementSize, values.bytes);
	const data = new DataView(at.bytes.buffer, at.bytes.byteOffset, at.bytes.length);
	for (let i = 0; i < replaced; i++) {
		const to = component.read(data, placesFrom + i * component.size);
		if (to >= count) {
			throw new ScanFault('index-out-of-range', `It replaces value number ${to}, but has only ${count}.`);
		}
		copy(values.bytes, valuesFrom + i * elementSize, to);
	}
}
