import { eventStream } from '../../lib/server/eventStream';
import { getStore } from '../../lib/server/getStore';
import type { RequestHandler } from './$types';

/** Tells a screen that the exhibit has changed. */
export const GET: RequestHandler = () =>
	new Response(eventStream(getStore()), {
		headers: {
			'content-type': 'text/event-stream',
			'cache-control': 'no-store',
			'x-accel-buffering': 'no',
		},
	});
