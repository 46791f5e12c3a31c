/** What a file's first bytes say it is, whatever its name; null when they say nothing. */
export type Kind = 'glb' | 'gltf' | 'ply' | 'stl-text' | 'foreign';

/** Well-known beginnings of files that hold no mesh, with the word for them. */
const FOREIGN: readonly (readonly [string, string])[] = [
	['PK\x03\x04', 'a ZIP archive'],
	['PK\x05\x06', 'an empty ZIP archive'],
	['\x1f\x8b', 'a gzip archive'],
	['7z\xbc\xaf\x27\x1c', 'a 7-Zip archive'],
	['Rar!', 'a RAR archive'],
	['%PDF', 'a PDF document'],
	['\x89PNG', 'a PNG picture'],
	['\xff\xd8\xff', 'a JPEG picture'],
	['GIF8', 'a GIF picture'],
	['RIFF', 'a sound, film or picture'],
	['II*\x00', 'a TIFF picture'],
	['MM\x00*', 'a TIFF picture'],
	['BM', 'a BMP picture'],
	['DRACO', 'a bare Draco file'],
	['Kaydara FBX', 'an FBX file'],
	['version https://git-lfs', 'a note that stands for a large file kept elsewhere'],
];

/** `name` is the plain word for what was found. */
export function sniff(bytes: Uint8Array): { kind: Kind; name: string } | null {
	const head = new TextDecoder('latin1').decode(bytes.subarray(0, 256));
	if (head.startsWith('glTF')) return { kind: 'glb', name: 'a GLB file' };
	// a binary STL's first 80 bytes are free text: its length tells it from everything that begins alike
	if (isBinaryStl(bytes)) return null;
	for (const [start, name] of FOREIGN) {
		// two letters alone are too little to go by
		if (start === 'BM' && !/^BM[\s\S]{4}\0\0\0\0/.test(head)) continue;
		if (head.startsWith(start)) return { kind: 'foreign', name };
	}
	const text = plain(head);
	if (/^ply\s/i.test(text)) return { kind: 'ply', name: 'a PLY file' };
	if (/^solid\b/i.test(text)) return { kind: 'stl-text', name: 'an STL file' };
	if (/^<(!doctype|html|head|body|\?xml|svg|!--)/i.test(text)) {
		return { kind: 'foreign', name: /^<(\?xml|svg)/i.test(text) ? 'an XML file' : 'a web page' };
	}
	if (/^\{\s*("|\})/.test(text)) return { kind: 'gltf', name: 'a glTF or other JSON file' };
	return null;
}

/** Whether the triangle count in the header agrees with the length of the file exactly. */
export function isBinaryStl(bytes: Uint8Array): boolean {
	if (bytes.length < 84) return false;
	const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
	return view.getUint32(80, true) * 50 + 84 === bytes.length;
}

/** Without byte order mark, leading space, or the zeros of UTF-16. */
function plain(head: string): string {
	return head
		.replace(/^(\xef\xbb\xbf|\xff\xfe|\xfe\xff)/, '')
		.replaceAll('\0', '')
		.trimStart();
}
