import type { UploadFormat } from '../../content/scanUpload';
import { UPLOAD_FORMATS } from '../../content/scanUpload';
import { isBinaryStl, sniff } from '../scan/sniff';
import { scanFormat } from '../scan/readScan';

/** Bytes in which a text's first corner is looked for; programs put long notes before it. */
const HEAD = 65_536;
/** A corner's line of an OBJ file. */
const CORNER = /^v[ \t]+[-+.\d]/m;

/**
 * What a scan is by its bytes, whatever its name says. Only where the bytes say nothing (a binary STL that is cut off
 * begins with any text) does the name's ending count. null: none of those that the desk takes in.
 */
export function scanFormatOf(bytes: Uint8Array, name: string): UploadFormat | null {
	const found = sniff(bytes);
	if (found) {
		if (found.kind === 'stl-text') return 'stl';
		return UPLOAD_FORMATS.find((format) => format === found.kind) ?? null;
	}
	if (isBinaryStl(bytes)) return 'stl';
	const head = new TextDecoder('latin1').decode(bytes.subarray(0, HEAD));
	if (!head.includes('\0') && CORNER.test(head)) return 'obj';
	const promised = scanFormat(name);
	return promised === 'stl' || promised === 'obj' ? promised : null;
}
