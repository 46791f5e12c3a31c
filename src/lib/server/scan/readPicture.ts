import sharp from 'sharp';
import type { Picture } from './paint';

/** Most pixels of a picture that is opened: 8192 x 8192. A bigger one may ask for more memory than there is. */
export const MOST_PIXELS = 8192 * 8192;
/** Pictures are brought down to this many pixels a side: a little finer than the corners that they colour, so that these do not pick out single specks. */
export const PICTURE_SIDE_PX = 1024;
const MOST_SECONDS = 20;

/**
 * Opens a JPEG, PNG or WebP and brings it down to at most 1024 pixels a side. Other kinds are refused by their first
 * bytes, before any decoder sees them; huge ones by the size that they announce. Throws an Error that says why in
 * words for a curator.
 */
export async function readPicture(bytes: Uint8Array): Promise<Picture> {
	if (!isPicture(bytes)) throw new Error('it is neither a JPEG nor a PNG nor a WebP');
	const { width, height } = await sharp(bytes, { limitInputPixels: false })
		.metadata()
		.catch(() => ({ width: 0, height: 0 }));
	if (width * height > MOST_PIXELS) {
		throw new Error(`it has ${width} x ${height} pixels, and 8192 x 8192 are the most`);
	}
	try {
		const { data, info } = await sharp(bytes, { limitInputPixels: MOST_PIXELS, sequentialRead: true })
			.resize(PICTURE_SIDE_PX, PICTURE_SIDE_PX, { fit: 'inside', withoutEnlargement: true })
			.toColourspace('srgb')
			.removeAlpha()
			.timeout({ seconds: MOST_SECONDS })
			.raw()
			.toBuffer({ resolveWithObject: true });
		if (info.channels !== 3) throw new Error('not three colours');
		return { width: info.width, height: info.height, pixels: new Uint8Array(data) };
	} catch {
		throw new Error('it is damaged');
	}
}

function isPicture(bytes: Uint8Array): boolean {
	const head = (...wanted: number[]): boolean => wanted.every((byte, i) => bytes[i] === byte);
	const webp =
		head(0x52, 0x49, 0x46, 0x46) && new TextDecoder('latin1').decode(bytes.subarray(8, 12)) === 'WEBP';
	return head(0xff, 0xd8, 0xff) || head(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a) || webp;
}
