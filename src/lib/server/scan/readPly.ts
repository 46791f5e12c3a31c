/*
 * Our own reader, not three's PLYLoader: that one leaves out every polygon of more than four corners without a word,
 * allocates by whatever the header announces, reads past the end, and takes an index that does not exist.
 */
import { asUtf8 } from './asUtf8';
import { FaceList, tooManyTriangles, tooManyVertices } from './faceList';
import { LIMITS } from './limits';
import { plyHeader, type PlyElement, type PlyProperty } from './plyHeader';
import { plySource, type PlySource } from './plySource';
import type { RawMesh } from './rawMesh';
import { ScanFault } from './scanProblem';

/**
 * Reads a text or binary PLY of either byte order: corners with their colours, polygons, triangle strips. Other
 * elements and properties, in any order, are passed over. Throws ScanFault.
 */
export function readPly(file: Uint8Array): RawMesh {
	const bytes = asUtf8(file);
	const header = plyHeader(bytes);
	const source = plySource(bytes, header);
	let corners: Corners | null = null;
	const faces = new FaceList();
	let surfaces = false;
	for (const element of header.elements) {
		checkCount(element, source);
		if (element.name === 'vertex') corners = readCorners(element, source);
		else {
			const list = element.properties.find(
				({ name, countType }) => countType && /^vertex_(indices|index)$/.test(name),
			);
			if (list) surfaces ||= element.count > 0;
			readFaces(element, list, source, faces);
		}
	}
	if (source.more()) {
		throw new ScanFault(
			'count-lies',
			`More data follow after the last that its header announces, from ${source.place()} on.`,
		);
	}
	if (!corners) throw new ScanFault('no-triangles', 'It has no points, so no surface either.');
	if (!surfaces) {
		throw new ScanFault('no-triangles', 'It has points only, and no triangles that join them to a surface.');
	}
	return { ...corners, indices: faces.finish(corners.positions) };
}

type Corners = Pick<RawMesh, 'positions' | 'colours'>;

/** A count that the bytes which follow cannot hold is found out before anything is allocated. */
function checkCount(element: PlyElement, source: PlySource): void {
	const least = element.properties.reduce(
		(sum, { type, countType }) => sum + source.least(countType ?? type),
		0,
	);
	// the last value of a text needs no space after it
	const room = least > 0 ? Math.floor((source.left() + 1) / least) : 0;
	if (element.count <= room) {
		if (element.name === 'vertex' && element.count > LIMITS.vertices) throw tooManyVertices();
		if (element.count > LIMITS.vertices) throw tooManyTriangles();
		return;
	}
	const lost = element.count <= LIMITS.plausibleCount;
	throw new ScanFault(
		lost ? 'truncated' : 'count-lies',
		`Its header announces ${element.count} of "${element.name.slice(0, 30)}", but there is room for ${room} at most.`,
	);
}

function readCorners(element: PlyElement, source: PlySource): Corners {
	const { properties, count } = element;
	const places = ['x', 'y', 'z'].map((axis) =>
		properties.findIndex(({ name, countType }) => name === axis && !countType),
	);
	if (places.some((place) => place < 0)) {
		throw new ScanFault('damaged', 'Its points have no x, y and z.');
	}
	const exact = places.some((place) => ['f64', 'i32', 'u32'].includes(properties[place].type));
	// text may have more digits than a single holds, whatever type it announces
	const positions = exact || source.text ? new Float64Array(count * 3) : new Float32Array(count * 3);
	const tints = tintPlaces(properties);
	const colours = tints ? new Uint8Array(count * 3) : undefined;
	const record = new Float64Array(properties.length);
	for (let i = 0; i < count; i++) {
		source.begin();
		for (let p = 0; p < properties.length; p++) {
			const { type, countType } = properties[p];
			if (countType) skipList(properties[p], source);
			else record[p] = source.value(type);
		}
		source.finish();
		for (let axis = 0; axis < 3; axis++) positions[i * 3 + axis] = record[places[axis]];
		if (tints && colours) {
			for (let k = 0; k < 3; k++) {
				const { place, scale } = tints[k];
				colours[i * 3 + k] = Math.min(255, Math.max(0, Math.round(record[place] * scale)));
			}
		}
	}
	return colours ? { positions, colours } : { positions };
}

/** Where red, green and blue stand, and what turns each into 0 .. 255; null when one is missing. */
function tintPlaces(properties: readonly PlyProperty[]): { place: number; scale: number }[] | null {
	const tints = ['red', 'green', 'blue'].map((colour) => {
		const place = properties.findIndex(
			({ name, countType }) => !countType && (name === colour || name === `diffuse_${colour}`),
		);
		const type = properties[place]?.type;
		return { place, scale: type === 'f32' || type === 'f64' ? 255 : type === 'u16' ? 255 / 65535 : 1 };
	});
	return tints.every(({ place }) => place >= 0) ? tints : null;
}

function readFaces(
	element: PlyElement,
	list: PlyProperty | undefined,
	source: PlySource,
	faces: FaceList,
): void {
	const { properties, count, name } = element;
	if (properties.length === 0) return;
	const corners: number[] = [];
	for (let i = 0; i < count; i++) {
		source.begin();
		for (const property of properties) {
			if (property !== list) {
				if (property.countType) skipList(property, source);
				else source.value(property.type);
				continue;
			}
			const length = listLength(property, source);
			for (let c = 0; c < length; c++) {
				const corner = source.value(property.type);
				const restart = corner === -1 && name === 'tristrips';
				if (!restart && !(Number.isInteger(corner) && corner >= 0 && corner < 2 ** 32)) {
					throw new ScanFault(
						'index-out-of-range',
						`At ${source.place()} a face uses point number ${corner}, counted from 0.`,
					);
				}
				corners[c] = corner;
			}
			if (name === 'tristrips') addStrips(corners, length, faces);
			else faces.add(corners, length);
		}
		source.finish();
	}
}

/** Strips of triangles in one list, each after a -1; every second triangle is turned round. */
function addStrips(corners: readonly number[], length: number, faces: FaceList): void {
	let start = 0;
	for (let c = 0; c < length; c++) {
		if (corners[c] === -1) start = c + 1;
		else if (c - start >= 2) {
			const [a, b] = (c - start) % 2 === 0 ? [c - 2, c - 1] : [c - 1, c - 2];
			faces.add([corners[a], corners[b], corners[c]], 3);
		}
	}
}

function listLength({ countType, type }: PlyProperty, source: PlySource): number {
	const length = source.value(countType!);
	if (!Number.isInteger(length) || length < 0) {
		throw new ScanFault(
			'count-lies',
			`At ${source.place()} a list announces ${length} values: one of the counts before it is wrong.`,
		);
	}
	if (length * source.least(type) > source.left() + 1) {
		throw new ScanFault(
			'truncated',
			`At ${source.place()} a list announces ${length} values, but the file ends before them.`,
		);
	}
	return length;
}

function skipList(property: PlyProperty, source: PlySource): void {
	const length = listLength(property, source);
	for (let i = 0; i < length; i++) source.value(property.type);
}
