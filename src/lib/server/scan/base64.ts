import { ScanFault } from './scanProblem';

const VALUES = new Int8Array(256).fill(-1);
'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'
	.split('')
	.forEach((letter, i) => (VALUES[letter.charCodeAt(0)] = i));

/** Bytes written as base64 (RFC 4648, section 4), from a place in a text. Throws ScanFault. */
export function base64(text: string, from: number): Uint8Array {
	let end = text.length;
	while (end > from && text[end - 1] === '=') end--;
	const bytes = new Uint8Array(Math.floor(((end - from) * 3) / 4));
	let held = 0;
	let bits = 0;
	let at = 0;
	for (let i = from; i < end; i++) {
		const value = VALUES[text.charCodeAt(i) & 255];
		if (value < 0) throw new ScanFault('damaged', 'Data within its description are not correct base64.');
		held = ((held << 6) | value) & 0xffff;
		bits += 6;
		if (bits >= 8) {
			bits -= 8;
			bytes[at++] = (held >> bits) & 255;
		}
	}
	return bytes;
}
