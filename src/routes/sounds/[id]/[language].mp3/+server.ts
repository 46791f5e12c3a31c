import { contentDir } from '../../../../lib/server/getStore';
import { serveSound } from '../../../../lib/server/serveSound';
import { soundFile } from '../../../../lib/server/sounds';
import type { RequestHandler } from './$types';

/** A label read aloud. */
export const GET: RequestHandler = ({ params, request }) =>
	serveSound(request, contentDir(), soundFile(params.id, params.language));
