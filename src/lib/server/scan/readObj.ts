/*
 * Our own reader, not three's OBJLoader: that one makes three separate corners of every triangle (so a scan takes
 * six times the memory), fans hollow polygons, reads a corner that does not exist as NaN or as 0,0,0, and takes
 * a damaged number for 0.
 */
import { asUtf8 } from './asUtf8';
import { FaceList, noSuchCorner, tooManyVertices } from './faceList';
import { growingFloats } from './growing';
import { LIMITS } from './limits';
import type { RawMesh } from './rawMesh';
import { ScanFault } from './scanProblem';
import { numberIn, Words } from './words';

const HASH = 35;
const SLASH = 47;
const BACKSLASH = 92;

/**
 * Reads the surfaces of an OBJ, all its objects and groups together; lines, points, curves and materials are left out.
 * A corner's number counts from 1, or back from the last corner when negative. Throws ScanFault.
 */
export function readObj(bytes: Uint8Array): RawMesh {
	const words = new Words(asUtf8(bytes));
	const positions = growingFloats();
	const colours = growingFloats();
	const faces = new FaceList();
	const values: number[] = [];
	const corners: number[] = [];
	let known = 0; // lines that mean something in an OBJ
	let lines = 0;
	let faceLines = 0;
	do {
		if (!words.next() || words.bytes[words.from] === HASH) continue;
		lines++;
		if (words.is('vn') || words.is('vt')) known++;
		else if (words.is('v')) {
			known++;
			const line = words.line;
			values.length = 0;
			while (nextWord(words) && values.length < 8) values.push(numberHere(words));
			if (values.length < 3) {
				throw new ScanFault('truncated', `Line ${line}: a point with ${values.length} numbers instead of 3.`);
			}
			for (let i = 0; i < 3; i++) positions.push(values[i]);
			// x y z r g b, or x y z w r g b
			if (values.length >= 6) for (let i = 3; i > 0; i--) colours.push(values[values.length - i]);
			if (positions.length > LIMITS.vertices * 3) throw tooManyVertices();
		} else if (words.is('f') || words.is('fo')) {
			known++;
			faceLines++;
			const line = words.line;
			corners.length = 0;
			while (nextWord(words)) {
				corners.push(cornerHere(words, positions.length / 3));
				if (corners.length > LIMITS.polygonCorners) break; // too many: the list of faces says so
			}
			if (corners.length < 3) {
				throw new ScanFault(
					'truncated',
					`Line ${line}: a face with ${corners.length} corners; the least is 3.`,
				);
			}
			faces.add(corners, corners.length);
		} else if (OTHER.has(words.text())) known++;
	} while (words.nextLine());
	if (known === 0 || known * 2 < lines) {
		throw new ScanFault('not-a-mesh', 'It is not an OBJ: hardly a line of it means anything in that format.');
	}
	const indices = faces.finish(positions.view());
	const cutOff = unused(indices, positions.length / 3) > 0.01 && faceLines > 0;
	if (cutOff && !endsWithLine(words.bytes)) {
		throw new ScanFault(
			'truncated',
			'Its last line is cut off, and it has points that belong to no triangle: a part is missing.',
		);
	}
	const coloured = colours.length > 0 && colours.length === positions.length;
	return {
		positions: positions.view(),
		indices,
		...(coloured ? { colours: toBytes(colours.view()) } : {}),
	};
}

/** Colours as 0 .. 255; most programs write shares of 1, some write 0 .. 255 as they are. */
function toBytes(values: Float64Array): Uint8Array {
	const full = values.some((value) => value > 1) ? 1 : 255;
	return Uint8Array.from(values, (value) => Math.round(Math.min(255, Math.max(0, value * full))));
}

/** First words of lines that an OBJ may have besides points and faces (the format's usual set). */
const OTHER = new Set(
	(
		'o g s vp l p mtllib usemtl maplib usemap mg cstype deg bmat step curv curv2 surf parm trim hole scrv ' +
		'sp end con call csh bevel c_interp d_interp lod shadow_obj trace_obj ctech stech'
	).split(' '),
);

/** The next word of the line, which a backslash at its end carries on to the next. */
function nextWord(words: Words): boolean {
	while (words.next()) {
		if (words.bytes[words.from] !== BACKSLASH || words.to - words.from > 1) {
			if (words.bytes[words.from] !== HASH) return true;
			words.to = words.from; // a comment ends the line
			return false;
		}
		if (!words.nextLine()) break;
	}
	words.to = words.from;
	return false;
}

function numberHere(words: Words): number {
	const value = words.number();
	if (!Number.isNaN(value)) return value;
	const found = words.text().slice(0, 40);
	throw new ScanFault(
		'not-a-number',
		`Line ${words.line}: "${found}" is not a number.`,
		/^-?\d+,\d+$/.test(found) ? 'Save it again with a point, not a comma, in the numbers.' : undefined,
	);
}

function cornerHere(words: Words, vertices: number): number {
	const { bytes, from, to, line } = words;
	let end = from;
	while (end < to && bytes[end] !== SLASH) end++;
	const number = numberIn(bytes, from, end);
	if (!Number.isInteger(number)) {
		throw new ScanFault('damaged', `Line ${line}: "${words.text().slice(0, 40)}" is not a point's number.`);
	}
	const corner = number > 0 ? number - 1 : vertices + number;
	if (number === 0 || corner < 0) {
		throw new ScanFault(
			'index-out-of-range',
			`Line ${line}: a face uses point number ${number}, which does not exist.`,
		);
	}
	if (corner >= 2 ** 32 - 1) throw noSuchCorner(corner, vertices);
	return corner;
}

function unused(indices: Uint32Array, vertices: number): number {
	const used = new Uint8Array(vertices);
	for (let k = 0; k < indices.length; k++) used[indices[k]] = 1;
	let count = 0;
	for (let i = 0; i < vertices; i++) count += used[i];
	return 1 - count / vertices;
}

function endsWithLine(bytes: Uint8Array): boolean {
	const last = bytes[bytes.length - 1];
	return last === 10 || last === 13;
}
