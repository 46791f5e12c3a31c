import { create } from 'qrcode';

/**
 * A QR code symbol (ISO/IEC 18004), true = dark, rows from the top, without the quiet zone. Error correction level M:
 * about 15 % of the symbol may be unreadable. Throws where the text is longer than any symbol holds.
 */
export function qrModules(text: string): boolean[][] {
	const { modules } = create(text, { errorCorrectionLevel: 'M' });
	return Array.from({ length: modules.size }, (_, row) =>
		Array.from({ length: modules.size }, (_, column) => Boolean(modules.get(row, column))),
	);
}
