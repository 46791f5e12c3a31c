import { version } from '$app/environment';
import { countsState } from '../../lib/server/counts/countsState';
import { contentDir, dataDir, getStore } from '../../lib/server/getStore';
import { getServerLog } from '../../lib/server/log/serverLog';
import { getScreens } from '../../lib/server/screens/getScreens';
import { serverHealth } from '../../lib/server/status/serverHealth';
import type { RequestHandler } from './$types';

/** For a watchdog: 200 while there is an exhibit to show, 503 while there is none. Its keys are told in DEVELOPERS.md. */
export const GET: RequestHandler = async () => {
	const about = { version, dataDir: dataDir(), contentDir: contentDir(), uptime_s: process.uptime() };
	const health = {
		...(await serverHealth(getStore(), getScreens(), getServerLog(), about)),
		counts: countsState(),
	};
	return Response.json(health, { status: health.ok ? 200 : 503, headers: { 'cache-control': 'no-store' } });
};
