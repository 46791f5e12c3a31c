import type { SessionNews } from '../../content/staffAnswer';

/** Told on the window when a request was refused because nobody is signed in any more. */
export const SIGNED_OUT = 'tooth-table-signed-out';

let token: string | null = null;

/** What the server says of the session; null without one. */
export async function sessionNews(method: 'GET' | 'PUT' = 'GET'): Promise<SessionNews | null> {
	const response =
		method === 'GET' ? await fetch('/desk/session') : await staffFetch('/desk/session', { method });
	if (!response.ok) return null;
	const news = (await response.json()) as SessionNews | null;
	token = news?.token ?? null;
	return news;
}

/**
 * As `fetch`, with the form token that every changing request of the desk carries. Whoever has signed in again in
 * another tab goes on here; whoever is signed out is told so, and what was typed stays on the page.
 */
export async function staffFetch(url: string, init: RequestInit = {}): Promise<Response> {
	token ??= (await sessionNews())?.token ?? null;
	const first = await send(url, init);
	if (first.status !== 403 && first.status !== 401) return first;
	token = (await sessionNews())?.token ?? null;
	const second = token === null ? first : await send(url, init);
	if (second.status === 401) window.dispatchEvent(new CustomEvent(SIGNED_OUT));
	return second;
}

/** The form token of the session, for what cannot be sent by `staffFetch`; asked for `anew` after a refusal. null without one. */
export async function formTokenNow(anew = false): Promise<string | null> {
	if (anew) token = null;
	token ??= (await sessionNews())?.token ?? null;
	return token;
}

function send(url: string, init: RequestInit): Promise<Response> {
	const headers = new Headers(init.headers);
	headers.set('x-staff-token', token ?? '');
	return fetch(url, { ...init, headers });
}
