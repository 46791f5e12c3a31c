import { dev } from '$app/environment';
import { error, type RequestEvent } from '@sveltejs/kit';

type Asked = Pick<RequestEvent, 'request' | 'getClientAddress'>;

/** Added by whatever passes requests on from elsewhere. */
const PASSED_ON = ['forwarded', 'x-forwarded-for', 'x-forwarded-host', 'x-real-ip', 'via'];

/**
 * Whether a request comes from this museum's own machine: its address is the loopback one, it asks for
 * localhost by that name (so no other site's name was pointed here), and nothing passed it on. What
 * changes a file must also come from a page of this server. While developing any address and name will
 * do, but a page of another site still may not change anything.
 *
 * A proxy on this machine that hides where its requests come from would let everyone in: let it not
 * pass on /desk.
 */
export function isStaff(event: Asked, developing: boolean = dev): boolean {
	const { request } = event;
	const { headers, method } = request;
	const host = headers.get('host') ?? '';
	const changes = method !== 'GET' && method !== 'HEAD';
	const origin = headers.get('origin');
	if (developing) return !changes || origin === null || hostOf(origin) === host;
	if (PASSED_ON.some((name) => headers.has(name))) return false;
	if (!isLoopback(event) || !isLocalName(host)) return false;
	return !changes || (origin !== null && hostOf(origin) === host);
}

/** Answers 404 to everyone but staff: nothing tells that there is a desk. */
export function staffOnly(event: Asked): void {
	if (!isStaff(event)) error(404, 'Not found');
}

function isLoopback(event: Asked): boolean {
	try {
		const address = event.getClientAddress().replace(/^::ffff:/i, '');
		return address === '::1' || /^127(\.\d{1,3}){3}$/.test(address);
	} catch {
		return false; // unknown, as when pages are made in advance
	}
}

/** `localhost:4173`, `127.0.0.1` or `[::1]:4173` */
const isLocalName = (host: string): boolean => /^(localhost|127\.0\.0\.1|\[::1\])(:\d{1,5})?$/i.test(host);

function hostOf(origin: string): string | null {
	try {
		const { protocol, host } = new URL(origin);
		return protocol === 'http:' || protocol === 'https:' ? host : null;
	} catch {
		return null; // "null", as from a file or a sandboxed frame
	}
}
