import { getScreens } from '../../../lib/server/screens/getScreens';
import { screenNote } from '../../../lib/server/screens/screenFiles';
import type { RequestHandler } from './$types';

/** How one screen is, for whatever starts its browser, also on another machine: the same as its file in DATA_DIR/screens. */
export const GET: RequestHandler = ({ params }) => {
	const report = getScreens()
		.list()
		.find(({ name }) => name === params.name);
	const headers = { 'cache-control': 'no-store' };
	if (!report)
		return Response.json({ error: 'No screen of that name has been seen.' }, { status: 404, headers });
	return Response.json(screenNote(report, Date.now()), { headers });
};
