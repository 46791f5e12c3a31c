import type { Handle, HandleServerError, ServerInit } from '@sveltejs/kit';
import { chooseLanguage } from './lib/server/chooseLanguage';
import { getStore } from './lib/server/getStore';
import { pxPerMm } from './lib/ui/pxPerMm';

/** How long the first answer may wait for the exhibit; a first start with many shapes takes longer. */
const READY_WITHIN_MS = 2_000;

export const init: ServerInit = async () => {
	let timer: NodeJS.Timeout | undefined;
	const enough = new Promise<void>((resolve) => {
		timer = setTimeout(resolve, READY_WITHIN_MS);
	});
	await Promise.race([getStore().ready, enough]);
	clearTimeout(timer);
};

export const handle: Handle = async ({ event, resolve }) => {
	const exhibit = getStore().current();
	event.locals.lang = chooseLanguage(exhibit, event.url.searchParams.get('lang'));
	// what control and letter sizes are made of, before any script has run
	const mm = `${exhibit ? pxPerMm(exhibit.screen).toFixed(4) : 2.7}px`;
	const response = await resolve(event, {
		transformPageChunk: ({ html }) => html.replace('%lang%', event.locals.lang).replace('%mm%', mm),
	});
	response.headers.set('x-content-type-options', 'nosniff');
	response.headers.set('referrer-policy', 'no-referrer');
	response.headers.set('permissions-policy', 'camera=(), microphone=(), geolocation=()');
	return response;
};

/** A wrong address is a visitor's typing, not a fault of ours; everything else is written down. */
export const handleError: HandleServerError = ({ error, event, status, message }) => {
	if (status !== 404) console.error(`${event.request.method} ${event.url.pathname}`, error);
	return { message };
};
