import { countsState } from '../../lib/server/counts/countsState';
import { getStore } from '../../lib/server/getStore';
import { healthOf } from '../../lib/server/healthOf';
import type { RequestHandler } from './$types';

/** For a watchdog: 200 while there is an exhibit to show, 503 while there is none. */
export const GET: RequestHandler = () => {
	const health = { ...healthOf(getStore(), process.uptime()), counts: countsState() };
	return Response.json(health, { status: health.ok ? 200 : 503, headers: { 'cache-control': 'no-store' } });
};
