/*
 * Our own reader, not three's STLLoader: that one takes a binary file whose length and count disagree for text and
 * finds nothing in it, searches text with regular expressions over one string of the whole file (which fails above
 * 512 MB and is slow), and gives a cut-off file back as a smaller surface without a word.
 */
import { asUtf8 } from './asUtf8';
import { tooManyTriangles } from './faceList';
import { growingFloats } from './growing';
import { LIMITS } from './limits';
import type { RawMesh } from './rawMesh';
import { ScanFault } from './scanProblem';
import { isBinaryStl } from './sniff';
import { Words } from './words';

const HEADER = 84;
const RECORD = 50;

/** Reads binary or text STL; a binary file may begin with the word "solid" too. Throws ScanFault. */
export function readStl(bytes: Uint8Array): RawMesh {
	if (isBinaryStl(bytes)) return binary(bytes);
	const text = asUtf8(bytes);
	const words = new Words(text);
	const solid = words.nextAnywhere() && words.is('solid');
	if (solid && !hasControls(text)) return ascii(words);
	if (!hasControls(bytes)) {
		throw new ScanFault('not-a-mesh', 'It is text, but not that of an STL file, which begins with "solid".');
	}
	if (bytes.length < HEADER) {
		throw new ScanFault(
			'truncated',
			`It has only ${bytes.length} bytes; the head of an STL file alone has ${HEADER}.`,
		);
	}
	return binary(bytes);
}

function binary(bytes: Uint8Array): RawMesh {
	const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
	const count = view.getUint32(80, true);
	const room = (bytes.length - HEADER) / RECORD;
	if (count > room) {
		const lost = count <= LIMITS.plausibleCount;
		throw new ScanFault(
			lost ? 'truncated' : 'count-lies',
			lost
				? `It announces ${count} triangles and ends after ${Math.floor(room)}.`
				: `It announces ${count} triangles, but has room for ${Math.floor(room)} only.`,
		);
	}
	const extra = bytes.length - HEADER - count * RECORD;
	if (extra >= RECORD) {
		throw new ScanFault(
			'count-lies',
			`It announces ${count} triangles, but ${extra} further bytes follow, enough for ${Math.floor(extra / RECORD)} more.`,
		);
	}
	if (count > LIMITS.triangles) throw tooManyTriangles();
	const positions = new Float32Array(count * 9);
	for (let t = 0, at = HEADER + 12, k = 0; t < count; t++, at += RECORD) {
		for (let i = 0; i < 36; i += 4) positions[k++] = view.getFloat32(at + i, true);
	}
	return { positions, indices: null };
}

function ascii(words: Words): RawMesh {
	const positions = growingFloats();
	let corners = -1; // -1: outside a facet's loop
	let ended = false;
	words.nextLine(); // the rest of the first line is a name
	while (words.nextAnywhere()) {
		if (words.is('vertex')) {
			if (corners < 0) throw unexpected(words);
			for (let axis = 0; axis < 3; axis++) {
				if (!words.nextAnywhere()) throw cutOff(words);
				const value = words.number();
				if (Number.isNaN(value)) {
					throw new ScanFault('not-a-number', `Line ${words.line}: "${short(words)}" is not a number.`);
				}
				positions.push(value);
			}
			corners++;
		} else if (words.is('loop')) corners = 0;
		else if (words.is('endloop')) {
			if (corners !== 3) {
				throw new ScanFault(
					'count-lies',
					`Line ${words.line}: a triangle with ${Math.max(0, corners)} corners instead of 3.`,
				);
			}
			if (positions.length > LIMITS.triangles * 9) throw tooManyTriangles();
			corners = -1;
		} else if (words.is('endsolid')) {
			if (corners >= 0) throw unexpected(words);
			ended = true;
			words.nextLine();
		} else if (words.is('solid')) {
			ended = false;
			words.nextLine();
		} else if (words.is('normal')) {
			// not used: the corners' order says it; may be missing or no number
			if (corners >= 0) throw unexpected(words);
			words.nextLine();
		} else if (!words.is('facet') && !words.is('outer') && !words.is('endfacet')) throw unexpected(words);
	}
	if (!ended) throw cutOff(words);
	return { positions: positions.view(), indices: null };
}

function cutOff({ line }: Words): ScanFault {
	return new ScanFault(
		'truncated',
		`It ends in the middle, at line ${line}: the closing word "endsolid" is missing.`,
	);
}

function unexpected(words: Words): ScanFault {
	if (words.at >= words.end) return cutOff(words);
	return new ScanFault('damaged', `Line ${words.line}: "${short(words)}" does not belong there.`);
}

const short = (words: Words): string => words.text().slice(0, 40);

/** Whether bytes that no text has occur near the beginning. */
function hasControls(bytes: Uint8Array): boolean {
	const end = Math.min(bytes.length, 1024);
	for (let i = 0; i < end; i++) {
		const byte = bytes[i];
		if (byte < 9 || (byte > 13 && byte < 32) || byte === 127) return true;
	}
	return false;
}
