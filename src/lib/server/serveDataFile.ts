import { open } from 'node:fs/promises';

/** A year: the address holds the content's hash, so what stands behind it never changes. */
const IMMUTABLE = 'public, max-age=31536000, immutable';

/**
 * Answers a request with one file that will never change. `path` null (nothing of that name) or a
 * missing file is a 404 with a JSON body. `etag` without quotes.
 */
export async function serveDataFile(
	request: Request,
	path: string | null,
	etag: string,
	contentType: string,
): Promise<Response> {
	if (path === null) return notFound();
	const quoted = `"${etag}"`;
	let file;
	try {
		file = await open(path, 'r');
	} catch (cause) {
		const code = (cause as NodeJS.ErrnoException).code;
		if (code === 'ENOENT' || code === 'ENOTDIR') return notFound();
		throw cause;
	}
	try {
		const headers = { 'cache-control': IMMUTABLE, etag: quoted, 'content-type': contentType };
		const known = request.headers.get('if-none-match');
		if (known && known.split(',').some((tag) => tag.trim().replace(/^W\//, '') === quoted)) {
			return new Response(null, { status: 304, headers });
		}
		const bytes = await file.readFile();
		return new Response(new Uint8Array(bytes), {
			headers: { ...headers, 'content-length': String(bytes.byteLength) },
		});
	} finally {
		await file.close();
	}
}

const notFound = (): Response =>
	Response.json({ error: 'There is nothing at this address.' }, { status: 404 });
