import { LIMITS } from './limits';
import { ScanFault } from './scanProblem';

/** Text as UTF-8 without a byte order mark; UTF-16, which some spreadsheets and editors write, is turned into it. */
export function asUtf8(bytes: Uint8Array): Uint8Array {
	if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return bytes.subarray(3);
	const little = bytes[0] === 0xff && bytes[1] === 0xfe;
	const big = bytes[0] === 0xfe && bytes[1] === 0xff;
	if (!little && !big) return bytes;
	if (bytes.length > LIMITS.fileBytes / 4) {
		throw new ScanFault('too-large', 'The text is written with two bytes a letter and too long for that.');
	}
	return new TextEncoder().encode(new TextDecoder(little ? 'utf-16le' : 'utf-16be').decode(bytes));
}
