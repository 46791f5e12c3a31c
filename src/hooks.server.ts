import { dev } from '$app/environment';
import { randomBytes } from 'node:crypto';
import { redirect, type Handle, type HandleServerError, type ServerInit } from '@sveltejs/kit';
import { ROOMS, type RoomId } from './lib/content/exhibit';
import { MOST_SCAN_BYTES } from './lib/content/scanUpload';
import { shownOn } from './lib/content/screens/shownOn';
import { textDirection } from './lib/content/textDirection';
import { askedLanguage } from './lib/server/askedLanguage';
import { chooseLanguage } from './lib/server/chooseLanguage';
import { getCounts } from './lib/server/counts/getCounts';
import { exporting } from './lib/server/exporting';
import { getStore } from './lib/server/getStore';
import { liftStyles } from './lib/server/liftStyles';
import { getServerLog } from './lib/server/log/serverLog';
import { screenAsked } from './lib/server/screenAsked';
import { getStaff } from './lib/server/staff/getStaff';
import { securePage } from './lib/server/securePage';
import { isStaff } from './lib/server/staffOnly';
import { postGate } from './lib/server/postGate';
import { pxPerMm } from './lib/ui/pxPerMm';
import { reachZone } from './lib/ui/reachZone';

/** How long the first answer may wait for the exhibit; a first start with many shapes takes longer. */
const READY_WITHIN_MS = 2_000;

export const init: ServerInit = async () => {
	if (exporting()) {
		// what becomes files is what the folder says now, whole
		await getStore().reload();
		return getStore().settled();
	}
	let timer: NodeJS.Timeout | undefined;
	const enough = new Promise<void>((resolve) => {
		timer = setTimeout(resolve, READY_WITHIN_MS);
	});
	await Promise.race([Promise.all([getStore().ready, getStaff().ready]), enough]);
	clearTimeout(timer);
	const log = getServerLog();
	process.on('uncaughtExceptionMonitor', (error) =>
		log.last('The server stops at a fault of its own.', error),
	);
	log.info('The server has started.', { event: 'server-start', exhibit: getStore().current()?.hash ?? null });
	// says on the terminal where they are kept, or why they are not
	getCounts();
};

/** What changes something is small and rare: a class answers every few seconds, and fifty screens may do so at once. */
const gate = postGate({
	most: 3000,
	window_ms: 60_000,
	mostBytes: 256_000,
	larger: { '/desk/new/scan': MOST_SCAN_BYTES },
});

/** As the layout sets them once it has come to life. */
const reachProperties = ({ top, bottom }: { top: number; bottom: number }): string =>
	`--reach-top:${(top * 100).toFixed(2)}dvh;--reach-bottom:${((1 - bottom) * 100).toFixed(2)}dvh`;

/** Whether a page belongs to a room that the exhibit has and this screen does not show. */
function closedHere(path: string, rooms: readonly RoomId[], shown: readonly RoomId[]): boolean {
	const room = ROOMS.find((one) => path === `/${one}` || path.startsWith(`/${one}/`));
	return room !== undefined && rooms.includes(room) && !shown.includes(room);
}

export const handle: Handle = async ({ event, resolve }) => {
	const refused = gate(event.request, event.url.pathname);
	if (refused) return refused;
	const exhibit = getStore().current();
	event.locals.screen = screenAsked(event);
	const shown = exhibit && shownOn(exhibit, event.locals.screen);
	event.locals.firstLang = shown?.languages[0]?.code ?? '';
	event.locals.lang = chooseLanguage(exhibit, askedLanguage(event.url) ?? event.locals.firstLang);
	// a room that stands elsewhere in the house
	if (exhibit && shown && closedHere(event.url.pathname, exhibit.rooms, shown.rooms)) redirect(303, '/');
	const spoken = exhibit?.languages.find(({ code }) => code === event.locals.lang);
	const dir = textDirection(event.locals.lang, spoken?.direction);
	// what control and letter sizes are made of, before any script has run
	const mm = `${shown ? pxPerMm(shown.screen).toFixed(4) : 2.7}px`;
	const zone = shown?.here.lowReach ? reachZone(shown.screen) : null;
	const reach = zone ? `;${reachProperties(zone)}` : '';
	let css = '';
	const response = await resolve(event, {
		transformPageChunk: ({ html }) => {
			const whole = html
				.replace('%lang%', event.locals.lang)
				.replace('%dir%', dir)
				.replace('%mm%', mm)
				.replace('%reach%', zone ? 'low' : 'usual')
				.replace('%zone%', reach);
			// while developing, styles come by script, and the policy lets them
			if (dev) return whole.replace('%lifted%', '');
			const lifted = liftStyles(whole);
			css ||= lifted.css;
			const rules = lifted.css && `<style data-lifted-rules>${lifted.css}</style>`;
			return lifted.html.replace('%lifted%', () => rules);
		},
	});
	// the room with words that are not saved yet, in a frame of the desk's
	const inDesk = event.url.pathname === '/compare' && event.url.searchParams.has('preview');
	securePage(response.headers, css, inDesk && isStaff(event));
	return response;
};

/** A wrong address is a visitor's typing, not a fault of ours; everything else is written down. */
export const handleError: HandleServerError = ({ error, event, status, message }) => {
	if (status === 404) return { message };
	// on the page it is a number that a visitor can tell, in the log the whole story
	const id = randomBytes(4).toString('hex');
	getServerLog().error(`${event.request.method} ${event.url.pathname} [${id}]`, error, {
		event: 'request-failed',
		id,
		status,
	});
	return { message, id };
};
