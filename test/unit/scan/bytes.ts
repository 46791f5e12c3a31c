/** Small tools for files as bytes. */

export const latin = (words: string): Uint8Array =>
	Uint8Array.from(words, (letter) => letter.charCodeAt(0) & 255);
export const joined = (...parts: Uint8Array[]): Uint8Array => new Uint8Array(Buffer.concat(parts));
export const utf16 = (words: string): Uint8Array =>
	joined(Uint8Array.of(0xff, 0xfe), new Uint8Array(Buffer.from(words, 'utf16le')));
/** A copy with something written into it. */
export function changed(bytes: Uint8Array, change: (view: DataView) => void): Uint8Array {
	const copy = bytes.slice();
	change(new DataView(copy.buffer));
	return copy;
}
