import { dataDir } from '../../../lib/server/getStore';
import { serveDataFile } from '../../../lib/server/serveDataFile';
import { isShapeHash, shapeFiles } from '../../../lib/server/shapeFiles';
import type { RequestHandler } from './$types';

/** A shape's line drawing. */
export const GET: RequestHandler = ({ params, request }) => {
	const path = isShapeHash(params.hash) ? shapeFiles(dataDir(), params.hash).drawing : null;
	return serveDataFile(request, path, params.hash, 'application/json');
};
