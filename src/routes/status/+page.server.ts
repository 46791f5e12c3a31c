import { version } from '$app/environment';
import { countsState } from '$lib/server/counts/countsState';
import { contentDir, dataDir, getStore } from '$lib/server/getStore';
import { getServerLog } from '$lib/server/log/serverLog';
import { getScreens } from '$lib/server/screens/getScreens';
import { staffOnly } from '$lib/server/staffOnly';
import { screenRows } from '$lib/server/status/screenRows';
import { serverHealth } from '$lib/server/status/serverHealth';
import type { PageServerLoad } from './$types';

const LOG_LINES = 50;

/** How the server and its screens are; for staff, also those who came by the staff corner's PIN. */
export const load: PageServerLoad = async (event) => {
	const session = staffOnly(event, 'corner');
	event.depends('status:now');
	const store = getStore();
	const screens = getScreens();
	const log = getServerLog();
	const about = { version, dataDir: dataDir(), contentDir: contentDir(), uptime_s: process.uptime() };
	return {
		atDesk: session.kind === 'desk',
		server: await serverHealth(store, screens, log, about),
		counts: countsState(),
		logTrouble: log.file.trouble,
		screens: screenRows(store.current(), screens.list(), version),
		log: log.tail(LOG_LINES).map(({ time, level, event: what, message }) => ({ time, level, what, message })),
	};
};
