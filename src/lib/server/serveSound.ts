import { open } from 'node:fs/promises';
import { pathInside } from './fsReader';

/** A spoken label has minutes, not hours: more is another file by mistake. */
const MOST_BYTES = 100_000_000;

/**
 * Answers a request for a recording in the content folder, the whole or one range of it (RFC 9110, 14: browsers
 * ask for ranges, and some play nothing without). `path` is relative to `folder`; null, or nothing there, is a 404.
 * A range that does not lie within the file is a 416. Curators may replace the file: it is asked for anew each time.
 */
export async function serveSound(request: Request, folder: string, path: string | null): Promise<Response> {
	if (path === null) return notFound();
	let file;
	try {
		file = await open(await pathInside(folder, path), 'r');
	} catch {
		return notFound();
	}
	try {
		const { size, mtimeMs } = await file.stat();
		if (size === 0 || size > MOST_BYTES) return notFound();
		const etag = `"${Math.round(mtimeMs).toString(36)}-${size.toString(36)}"`;
		const headers = {
			'accept-ranges': 'bytes',
			'cache-control': 'no-cache',
			'content-type': 'audio/mpeg',
			etag,
		};
		if (request.headers.get('if-none-match') === etag) return new Response(null, { status: 304, headers });
		const sameFile = [null, etag].includes(request.headers.get('if-range'));
		const range = sameFile ? rangeOf(request.headers.get('range'), size) : null;
		if (range === 'outside') {
			return new Response(null, { status: 416, headers: { ...headers, 'content-range': `bytes */${size}` } });
		}
		const { first, last } = range ?? { first: 0, last: size - 1 };
		const bytes = new Uint8Array(last - first + 1);
		const { bytesRead } = await file.read(bytes, 0, bytes.length, first);
		return new Response(bytes.subarray(0, bytesRead), {
			status: range ? 206 : 200,
			headers: {
				...headers,
				'content-length': String(bytesRead),
				...(range ? { 'content-range': `bytes ${first}-${last}/${size}` } : {}),
			},
		});
	} finally {
		await file.close();
	}
}

/** One range of a `Range` header, both ends included; null where the whole is meant (none, several, or another unit). */
function rangeOf(header: string | null, size: number): { first: number; last: number } | 'outside' | null {
	const match = /^bytes=(\d*)-(\d*)$/.exec(header?.trim() ?? '');
	if (!match || (match[1] === '' && match[2] === '')) return null;
	if (match[1] === '') {
		const count = Math.min(Number(match[2]), size);
		return count === 0 ? 'outside' : { first: size - count, last: size - 1 };
	}
	const first = Number(match[1]);
	const last = match[2] === '' ? size - 1 : Math.min(Number(match[2]), size - 1);
	if (match[2] !== '' && Number(match[2]) < first) return null;
	return first >= size ? 'outside' : { first, last };
}

const notFound = (): Response =>
	Response.json({ error: 'There is nothing at this address.' }, { status: 404 });
