import { dataDir } from '../../../lib/server/getStore';
import { serveDataFile } from '../../../lib/server/serveDataFile';
import { parsePictureName, shapeFiles } from '../../../lib/server/shapeFiles';
import type { RequestHandler } from './$types';

/** A shape's tray picture. */
export const GET: RequestHandler = ({ params, request }) => {
	const name = parsePictureName(params.name);
	const path = name ? shapeFiles(dataDir(), name.hash).picture(name.preservation) : null;
	return serveDataFile(request, path, params.name, 'image/webp');
};
