export type TableEncoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/**
 * What Windows-1252 has at 0x80 to 0x9F, where Latin-1 has nothing to print. Source: WHATWG Encoding Standard,
 * index windows-1252. Written out, since Node 20's own decoder takes these bytes for Latin-1.
 */
const FROM_0x80 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008DŽ\u008F\u0090‘’“”•–—˜™š›œ\u009DžŸ';

/**
 * Text of a table as spreadsheets save it: UTF-8 with or without its mark, UTF-16 ("Unicode text") with its mark or
 * recognised by its empty bytes, or Windows-1252, which is what is left when the bytes are no UTF-8.
 */
export function decodeTable(bytes: Uint8Array): { text: string; encoding: TableEncoding } {
	const read = (
		encoding: Exclude<TableEncoding, 'windows-1252'>,
		fatal = false,
	): { text: string; encoding: TableEncoding } => ({
		text: new TextDecoder(encoding, { fatal }).decode(bytes),
		encoding,
	});
	if (bytes[0] === 0xff && bytes[1] === 0xfe) return read('utf-16le');
	if (bytes[0] === 0xfe && bytes[1] === 0xff) return read('utf-16be');
	const start = bytes.subarray(0, 2000);
	const empty = (odd: 0 | 1): number => start.filter((byte, i) => i % 2 === odd && byte === 0).length;
	// Latin letters in two bytes: every second one is empty
	if (empty(1) > start.length / 4) return read('utf-16le');
	if (empty(0) > start.length / 4) return read('utf-16be');
	try {
		return read('utf-8', true);
	} catch {
		const text = Buffer.from(bytes)
			.toString('latin1')
			.replace(/[\u0080-\u009F]/g, (sign) => FROM_0x80[sign.charCodeAt(0) - 0x80]);
		return { text, encoding: 'windows-1252' };
	}
}
