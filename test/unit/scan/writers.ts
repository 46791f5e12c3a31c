import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';

/** A surface of polygons with any number of corners, for files that can hold them. */
export interface PolyMesh {
	/** x, y, z per corner */
	positions: number[];
	faces: number[][];
	/** red, green, blue per corner, 0 .. 255 */
	colours?: number[];
}

/** Cone on the plane y = 0 whose base is one polygon and whose side is made of quadrilaterals up to a fan at the tip. */
export function polygonCone(radius: number, height: number, around = 24, up = 8): PolyMesh {
	const positions: number[] = [];
	const faces: number[][] = [];
	for (let i = 0; i < up; i++) {
		const r = radius * (1 - i / up);
		for (let j = 0; j < around; j++) {
			const t = (2 * Math.PI * j) / around;
			positions.push(r * Math.cos(t), (height * i) / up, r * Math.sin(t));
		}
	}
	const tip = positions.length / 3;
	positions.push(0, height, 0);
	const at = (i: number, j: number): number => i * around + (j % around);
	faces.push(Array.from({ length: around }, (_, j) => at(0, j)));
	for (let j = 0; j < around; j++) {
		for (let i = 0; i + 1 < up; i++) faces.push([at(i, j + 1), at(i, j), at(i + 1, j), at(i + 1, j + 1)]);
		faces.push([at(up - 1, j + 1), at(up - 1, j), tip]);
	}
	const colours = Array.from({ length: positions.length }, (_, i) => (i * 7) % 256);
	return { positions, faces, colours };
}

/** The same surface as triangles, each polygon a fan: right for the convex ones of `polygonCone`. */
export function fanned({ positions, faces }: PolyMesh): TriMesh {
	const indices = faces.flatMap((face) =>
		Array.from({ length: face.length - 2 }, (_, i) => [face[0], face[i + 1], face[i + 2]]).flat(),
	);
	return { positions: Float32Array.from(positions), indices: Uint32Array.from(indices) };
}

export function asPolygons(mesh: TriMesh): PolyMesh {
	const faces = Array.from({ length: mesh.indices.length / 3 }, (_, t) => [
		...mesh.indices.subarray(t * 3, t * 3 + 3),
	]);
	return { positions: [...mesh.positions], faces };
}

export const text = (words: string): Uint8Array => new TextEncoder().encode(words);

/** Layout: Marshall Burns, Automated Fabrication (1993), section 6.5: 80 bytes, a count, 50 bytes a triangle. */
export function stlBinary(mesh: TriMesh, header = ''): Uint8Array {
	const triangles = mesh.indices.length / 3;
	const bytes = new Uint8Array(84 + triangles * 50);
	bytes.set(text(header.slice(0, 80)));
	const view = new DataView(bytes.buffer);
	view.setUint32(80, triangles, true);
	for (let k = 0; k < mesh.indices.length; k++) {
		const at = 84 + Math.floor(k / 3) * 50 + 12 + (k % 3) * 12;
		for (let axis = 0; axis < 3; axis++) {
			view.setFloat32(at + axis * 4, mesh.positions[mesh.indices[k] * 3 + axis], true);
		}
	}
	return bytes;
}

export function stlText(mesh: TriMesh, lineEnd = '\n', name = 'cone'): string {
	const lines = [`solid ${name}`];
	for (let k = 0; k < mesh.indices.length; k += 3) {
		lines.push('facet normal 0 0 0', ' outer loop');
		for (let c = k; c < k + 3; c++) {
			const at = mesh.indices[c] * 3;
			lines.push(
				`  vertex ${[...mesh.positions.subarray(at, at + 3)].map((v) => v.toExponential(8)).join(' ')}`,
			);
		}
		lines.push(' endloop', 'endfacet');
	}
	return [...lines, `endsolid ${name}`, ''].join(lineEnd);
}

export type PlyEncoding = 'ascii' | 'binary_little_endian' | 'binary_big_endian';

export interface PlyWriting {
	encoding: PlyEncoding;
	/** type of the positions; default float */
	type?: 'float' | 'double';
	/** the faces' list stands behind a value and another list; default false */
	burdened?: boolean;
	/** the faces stand before the corners; default false */
	facesFirst?: boolean;
	lineEnd?: string;
}

/** Layout: Greg Turk, The PLY Polygon File Format (1994). */
export function ply(mesh: PolyMesh, writing: PlyWriting): Uint8Array {
	const { encoding, type = 'float', burdened = false, facesFirst = false, lineEnd = '\n' } = writing;
	const { positions, faces, colours } = mesh;
	const corners = positions.length / 3;
	const vertexHead = [
		`element vertex ${corners}`,
		...['x', 'y', 'z'].map((axis) => `property ${type} ${axis}`),
		...(colours ? ['red', 'green', 'blue'].map((colour) => `property uchar ${colour}`) : []),
	];
	const faceHead = [
		`element face ${faces.length}`,
		...(burdened ? ['property short label', 'property list uchar float texcoord'] : []),
		'property list uchar int vertex_indices',
	];
	const head = [
		'ply',
		`format ${encoding} 1.0`,
		'comment made for a test',
		...(facesFirst ? [...faceHead, ...vertexHead] : [...vertexHead, ...faceHead]),
		'end_header',
		'',
	].join(lineEnd);
	const little = encoding === 'binary_little_endian';
	const data: number[] = [];
	const lines: string[] = [];
	const scratch = new DataView(new ArrayBuffer(8));
	let line: number[] = [];
	const put = (kind: 'uchar' | 'short' | 'int' | 'float' | 'double', value: number): void => {
		line.push(value);
		const size = { uchar: 1, short: 2, int: 4, float: 4, double: 8 }[kind];
		if (kind === 'uchar') scratch.setUint8(0, value);
		else if (kind === 'short') scratch.setInt16(0, value, little);
		else if (kind === 'int') scratch.setInt32(0, value, little);
		else if (kind === 'float') scratch.setFloat32(0, value, little);
		else scratch.setFloat64(0, value, little);
		for (let i = 0; i < size; i++) data.push(scratch.getUint8(i));
	};
	const end = (): void => {
		lines.push(line.join(' '));
		line = [];
	};
	const putCorners = (): void => {
		for (let i = 0; i < corners; i++) {
			for (let axis = 0; axis < 3; axis++) put(type, positions[i * 3 + axis]);
			if (colours) for (let k = 0; k < 3; k++) put('uchar', colours[i * 3 + k]);
			end();
		}
	};
	const putFaces = (): void => {
		for (const face of faces) {
			if (burdened) {
				put('short', -7);
				put('uchar', 2);
				put('float', 0.25);
				put('float', 0.75);
			}
			put('uchar', face.length);
			for (const corner of face) put('int', corner);
			end();
		}
	};
	for (const part of facesFirst ? [putFaces, putCorners] : [putCorners, putFaces]) part();
	const body = encoding === 'ascii' ? text(lines.join(lineEnd) + lineEnd) : Uint8Array.from(data);
	const start = text(head);
	const bytes = new Uint8Array(start.length + body.length);
	bytes.set(start);
	bytes.set(body, start.length);
	return bytes;
}

export interface ObjWriting {
	/** corners counted back from the last one */
	negative?: boolean;
	/** each corner with texture and normal numbers behind it */
	slashes?: boolean;
	/** faces spread over this many objects */
	objects?: number;
	lineEnd?: string;
}

export function obj(mesh: PolyMesh, writing: ObjWriting = {}): string {
	const { negative = false, slashes = false, objects = 1, lineEnd = '\n' } = writing;
	const { positions, faces, colours } = mesh;
	const corners = positions.length / 3;
	const lines = ['# made for a test', 'mtllib none.mtl'];
	for (let i = 0; i < corners; i++) {
		const tint = colours?.slice(i * 3, i * 3 + 3).map((value) => value / 255) ?? [];
		lines.push(`v ${[...positions.slice(i * 3, i * 3 + 3), ...tint].join(' ')}`);
	}
	if (slashes) lines.push('vt 0 0', 'vn 0 1 0');
	faces.forEach((face, f) => {
		if (f % Math.ceil(faces.length / objects) === 0) lines.push(`o part${f}`, `g group${f} all`, 's 1');
		const names = face.map((corner) => `${negative ? corner - corners : corner + 1}${slashes ? '/1/1' : ''}`);
		lines.push(`f ${names.join(' ')}`);
	});
	return [...lines, ''].join(lineEnd);
}
