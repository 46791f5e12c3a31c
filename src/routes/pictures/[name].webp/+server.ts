import { dataDir, getStore } from '../../../lib/server/getStore';
import { openToWeb } from '../../../lib/server/iiif/openToWeb';
import { serveDataFile } from '../../../lib/server/serveDataFile';
import { parsePictureName, shapeFiles } from '../../../lib/server/shapeFiles';
import type { RequestHandler } from './$types';

/** A shape's tray picture. */
export const GET: RequestHandler = async ({ params, request }) => {
	const name = parsePictureName(params.name);
	const path = name ? shapeFiles(dataDir(), name.hash).picture(name.preservation) : null;
	return openToWeb(
		await serveDataFile(request, path, params.name, 'image/webp'),
		getStore().current()?.publicAddress,
	);
};
