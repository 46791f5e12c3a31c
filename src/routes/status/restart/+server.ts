import { z } from 'zod';
import { getServerLog } from '../../../lib/server/log/serverLog';
import { getScreens } from '../../../lib/server/screens/getScreens';
import { readJson } from '../../../lib/server/staff/readJson';
import { staffOnly } from '../../../lib/server/staffOnly';
import type { RequestHandler } from './$types';

const asking = z.strictObject({ key: z.string().max(60) });

/** Tells one screen to load its page anew; 404 where it does not listen. */
export const POST: RequestHandler = async (event) => {
	staffOnly(event, 'corner');
	const asked = await readJson(event.request, asking);
	const headers = { 'cache-control': 'no-store' };
	if (!asked) return new Response(null, { status: 400, headers });
	const told = getScreens().restart(asked.key);
	if (told)
		getServerLog().info(`Staff told the screen ${asked.key} to restart.`, {
			event: 'screen-restart',
			screen: asked.key,
		});
	return new Response(null, { status: told ? 204 : 404, headers });
};
