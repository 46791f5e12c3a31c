import { dev } from '$app/environment';
import { error, redirect, type RequestEvent } from '@sveltejs/kit';
import { createHash, timingSafeEqual } from 'node:crypto';
import { sameOrigin } from './sameOrigin';
import { getStaff, liveSession } from './staff/getStaff';
import { ENDS_AFTER_ms, type Session, type SessionKind } from './staff/sessions';

export type Asked = Pick<RequestEvent, 'request' | 'getClientAddress' | 'cookies' | 'url' | 'isDataRequest'>;
type Placed = Pick<RequestEvent, 'request' | 'getClientAddress'>;

/** Whose requests may reach the desk at all: this machine's; gallery screens' staff corner too; everyone's on the network. */
export type DeskFrom = 'here' | 'screens' | 'network';

export const deskFrom = (value: string | undefined = process.env.DESK_FROM): DeskFrom =>
	value === 'screens' || value === 'network' ? value : 'here';

export const SESSION_COOKIE = 'tooth-table-staff';
/** Carries the form token of every request that changes something. */
export const TOKEN_HEADER = 'x-staff-token';
/** Added by whatever passes requests on from elsewhere. */
const PASSED_ON = ['forwarded', 'x-forwarded-for', 'x-forwarded-host', 'x-real-ip', 'via'];

/**
 * Whether a request comes from this museum's own machine: its address is the loopback one, it asks for
 * localhost by that name (so no other site's name was pointed here), and nothing passed it on. What
 * changes a file must also come from a page of this server. While developing any address and name will
 * do, but a page of another site still may not change anything.
 *
 * A proxy on this machine that hides where its requests come from would let everyone to the door: let it
 * not pass on /desk.
 */
export function isFromHere(event: Placed, developing: boolean = dev): boolean {
	if (!isOwnPage(event.request)) return false;
	if (developing) return true;
	const { headers } = event.request;
	if (PASSED_ON.some((name) => headers.has(name))) return false;
	return isLoopback(event) && isLocalName(headers.get('host') ?? '');
}

/** Whether a request may come to the door of the desk, or of the staff corner; who it is from is asked next. */
export function mayKnock(
	event: Placed,
	kind: SessionKind = 'desk',
	from: DeskFrom = deskFrom(),
	developing: boolean = dev,
): boolean {
	if (from === 'network' || (from === 'screens' && kind === 'corner')) return isOwnPage(event.request);
	return isFromHere(event, developing);
}

/** Answers 404 to everyone who may not come to the door: nothing tells that there is a desk. */
export function staffDoor(event: Placed, kind: SessionKind = 'desk'): void {
	if (!mayKnock(event, kind)) error(404, 'Not found');
}

/**
 * The guard of everything below /desk, first in every load, action and endpoint: 404 to who may not come to the door,
 * the passphrase's page (or 401) to who is not signed in, 403 to what would change something without the form token.
 * `enough`: 'corner' lets the PIN's short session in as well.
 */
export function staffOnly(event: Asked, enough: SessionKind = 'desk'): Session {
	staffDoor(event, enough);
	const session = sessionOf(event, enough);
	if (!session) notSignedIn(event);
	if (changes(event.request) && !hasToken(event)) error(403, 'Form token missing or out of date');
	if (countsAsUse(event)) getStaff().sessions.use(session);
	return session;
}

/** Whether a request comes from staff who are signed in; for what they may see on pages that are everybody's. */
export const isStaff = (event: Asked): boolean => mayKnock(event) && sessionOf(event, 'desk') !== null;

/** The live session of a request, if it is enough. */
export function sessionOf(event: Pick<Asked, 'cookies'>, enough: SessionKind = 'corner'): Session | null {
	const session = liveSession(getStaff(), event.cookies.get(SESSION_COOKIE));
	return session && (enough === 'corner' || session.kind === 'desk') ? session : null;
}

/** What every changing request of a session carries beside the cookie; no other site can know it. */
export const formToken = (token: string): string =>
	createHash('sha256').update(`form token of ${token}`).digest('base64url');

/** Gives the browser its session: for this site alone, out of reach of scripts, over https only where the page came by it. */
export function giveSession({ request, cookies }: Asked, token: string, kind: SessionKind): void {
	cookies.set(SESSION_COOKIE, token, {
		path: '/',
		httpOnly: true,
		sameSite: 'strict',
		secure: (request.headers.get('origin') ?? '').startsWith('https:'),
		maxAge: ENDS_AFTER_ms[kind] / 1000,
	});
}

export const takeSession = ({ request, cookies }: Asked): void =>
	cookies.delete(SESSION_COOKIE, {
		path: '/',
		httpOnly: true,
		sameSite: 'strict',
		secure: (request.headers.get('origin') ?? '').startsWith('https:'),
	});

const changes = ({ method }: Request): boolean => method !== 'GET' && method !== 'HEAD';

/** Pages ask for their data again by themselves: only what somebody did counts. */
const countsAsUse = ({ request, isDataRequest }: Asked): boolean =>
	changes(request) ||
	(!isDataRequest && (request.headers.get('sec-fetch-mode') ?? 'navigate') === 'navigate');

/** Reading may come from anywhere that may knock; what changes something must come from a page of this server. */
function isOwnPage(request: Request): boolean {
	if (!changes(request)) return true;
	const site = request.headers.get('sec-fetch-site');
	return (site === null || site === 'same-origin') && sameOrigin(request);
}

function hasToken({ request, cookies }: Asked): boolean {
	const given = Buffer.from(request.headers.get(TOKEN_HEADER) ?? '');
	const wanted = Buffer.from(formToken(cookies.get(SESSION_COOKIE) ?? ''));
	return given.length === wanted.length && timingSafeEqual(given, wanted);
}

function notSignedIn({ request, url, isDataRequest }: Asked): never {
	const isPage = isDataRequest || (request.headers.get('accept') ?? '').includes('text/html');
	if (changes(request) || !isPage) error(401, 'Not signed in');
	const to = new URLSearchParams({ to: url.pathname });
	const lang = url.searchParams.get('lang');
	if (lang) to.set('lang', lang);
	redirect(303, `/desk/enter?${to}`);
}

function isLoopback(event: Placed): boolean {
	try {
		const address = event.getClientAddress().replace(/^::ffff:/i, '');
		return address === '::1' || /^127(\.\d{1,3}){3}$/.test(address);
	} catch {
		return false; // unknown, as when pages are made in advance
	}
}

/** `localhost:4173`, `127.0.0.1` or `[::1]:4173` */
const isLocalName = (host: string): boolean => /^(localhost|127\.0\.0\.1|\[::1\])(:\d{1,5})?$/i.test(host);
