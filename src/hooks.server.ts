import type { Handle, HandleServerError, ServerInit } from '@sveltejs/kit';
import { chooseLanguage } from './lib/server/chooseLanguage';
import { getStore } from './lib/server/getStore';

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
	event.locals.lang = chooseLanguage(getStore().current(), event.url.searchParams.get('lang'));
	const response = await resolve(event, {
		transformPageChunk: ({ html }) => html.replace('%lang%', event.locals.lang),
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
