import { version } from '$app/environment';
import { cleanScreenName } from '../../lib/content/screens/shownOn';
import { eventStream, PING_EVERY_MS } from '../../lib/server/eventStream';
import { getStore } from '../../lib/server/getStore';
import { getScreens } from '../../lib/server/screens/getScreens';
import type { RequestHandler } from './$types';

const PAGE = /^[0-9a-f]{16}$/;

/** Tells a screen that the exhibit has changed; one that says its page (and its name) can also be told to restart. */
export const GET: RequestHandler = ({ url }) => {
	const page = url.searchParams.get('page') ?? '';
	const name = cleanScreenName(url.searchParams.get('screen'));
	const orders = PAGE.test(page)
		? (restart: () => void) => getScreens().listen(name, page, restart)
		: undefined;
	return new Response(eventStream(getStore(), version, PING_EVERY_MS, orders), {
		headers: {
			'content-type': 'text/event-stream',
			'cache-control': 'no-store',
			'x-accel-buffering': 'no',
		},
	});
};
