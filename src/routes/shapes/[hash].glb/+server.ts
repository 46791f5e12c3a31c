import { dataDir, getStore } from '../../../lib/server/getStore';
import { openToWeb } from '../../../lib/server/iiif/openToWeb';
import { serveDataFile } from '../../../lib/server/serveDataFile';
import { isShapeHash, shapeFiles } from '../../../lib/server/shapeFiles';
import type { RequestHandler } from './$types';

/** A prepared shape. */
export const GET: RequestHandler = async ({ params, request }) => {
	const path = isShapeHash(params.hash) ? shapeFiles(dataDir(), params.hash).glb : null;
	return openToWeb(
		await serveDataFile(request, path, params.hash, 'model/gltf-binary'),
		getStore().current()?.publicAddress,
	);
};
