import { error } from '@sveltejs/kit';
import { zipSync } from 'fflate';
import type { ServedMedia } from '$lib/server/darwinCore/records';
import { darwinCoreFiles } from '$lib/server/darwinCore/darwinCoreFiles';
import { dataDir, getStore } from '$lib/server/getStore';
import { shapeFiles, shapeUrl } from '$lib/server/shapeFiles';
import { sha256OfFile } from '$lib/server/shapeHash';
import { staffOnly } from '$lib/server/staffOnly';
import type { RequestHandler } from './$types';

/** The collection as a Darwin Core archive, zipped, for other collections and portals. For staff only. */
export const GET: RequestHandler = async (event) => {
	staffOnly(event);
	const exhibit = getStore().current();
	if (!exhibit) error(503, 'Not ready');
	const served = new Map<string, ServedMedia>();
	for (const { id, shape, prepared } of exhibit.specimens) {
		if (shape.kind !== 'scan') continue;
		const { glb } = shapeFiles(dataDir(), prepared.hash);
		const sha256 = await sha256OfFile(glb).catch(() => undefined);
		served.set(id, { path: shapeUrl(prepared.hash), ...(sha256 && { sha256 }) });
	}
	const made = new Date();
	const files = darwinCoreFiles(
		exhibit,
		({ id, prepared }) => served.get(id) ?? { path: shapeUrl(prepared.hash) },
		made.toISOString().slice(0, 10),
	);
	const encoder = new TextEncoder();
	const zip = zipSync(
		Object.fromEntries(Object.entries(files).map(([name, text]) => [name, encoder.encode(text)])),
		{ mtime: made },
	);
	return new Response(new Uint8Array(zip), {
		headers: {
			'content-type': 'application/zip',
			'content-disposition': 'attachment; filename="darwin-core.zip"',
			'cache-control': 'no-store',
		},
	});
};
