import { asUtf8 } from './asUtf8';
import type { Gltf } from './gltfTypes';
import { LIMITS } from './limits';
import { ScanFault } from './scanProblem';

const JSON_CHUNK = 0x4e4f534a;
const BINARY_CHUNK = 0x004e4942;

/** The two parts of a GLB (Khronos glTF 2.0 specification, section 4), or the text of a .gltf. Throws ScanFault. */
export function gltfContainer(
	bytes: Uint8Array,
	format: 'glb' | 'gltf',
): { json: Gltf; binary: Uint8Array | null } {
	if (format === 'gltf') return { json: parse(asUtf8(bytes)), binary: null };
	const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
	const magic = new TextDecoder('latin1').decode(bytes.subarray(0, 4));
	if (magic !== 'glTF') {
		throw new ScanFault('not-a-mesh', 'It does not begin with "glTF", as every GLB file does.');
	}
	if (bytes.length < 20) throw new ScanFault('truncated', 'It ends in its head.');
	const version = view.getUint32(4, true);
	if (version !== 2) {
		throw new ScanFault('unknown-format', `It is GLB version ${version}; only version 2 is in use and read.`);
	}
	const length = view.getUint32(8, true);
	if (length > bytes.length) {
		throw new ScanFault('truncated', `It should have ${length} bytes, but has ${bytes.length}.`);
	}
	let json: Gltf | null = null;
	let binary: Uint8Array | null = null;
	for (let at = 12, n = 0; at + 8 <= length; n++) {
		const size = view.getUint32(at, true);
		const type = view.getUint32(at + 4, true);
		at += 8;
		if (size > length - at) {
			throw new ScanFault(
				'count-lies',
				`A part of it announces ${size} bytes; only ${length - at} are left.`,
			);
		}
		const part = bytes.subarray(at, at + size);
		if (n === 0 && type === JSON_CHUNK) json = parse(part);
		else if (n === 1 && type === BINARY_CHUNK) binary = part;
		at += size;
	}
	if (!json) throw new ScanFault('damaged', 'Its first part is not the description of a scene.');
	return { json, binary };
}

function parse(text: Uint8Array): Gltf {
	if (depthOf(text) > LIMITS.jsonDepth) {
		throw new ScanFault('nested-too-deep', 'Its description has brackets within brackets without end.');
	}
	let json: unknown;
	try {
		json = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(text));
	} catch {
		const ends = /[}\]]\s*\0*\s*$/.test(new TextDecoder('latin1').decode(text.subarray(-64)));
		throw new ScanFault(
			ends ? 'damaged' : 'truncated',
			ends ? 'Its description is not correct JSON.' : 'Its description ends in the middle.',
		);
	}
	if (typeof json !== 'object' || json === null || !('asset' in json)) {
		throw new ScanFault('not-a-mesh', 'It is JSON, but not the description of a glTF scene.');
	}
	const { version } = (json.asset ?? {}) as { version?: unknown };
	if (typeof version !== 'string' || !/^2(\.|$)/.test(version)) {
		throw new ScanFault(
			'unknown-format',
			`It is glTF version ${String(version).slice(0, 20)}; only version 2 is in use and read.`,
		);
	}
	return json as Gltf;
}

/** Most open brackets at once, outside of strings. */
function depthOf(text: Uint8Array): number {
	let depth = 0;
	let most = 0;
	let inString = false;
	for (let i = 0; i < text.length; i++) {
		const byte = text[i];
		if (inString) {
			if (byte === 92) i++;
			else if (byte === 34) inString = false;
		} else if (byte === 34) inString = true;
		else if (byte === 91 || byte === 123) most = Math.max(most, ++depth);
		else if (byte === 93 || byte === 125) depth--;
	}
	return most;
}
