import type { Cookies } from '@sveltejs/kit';
import { cleanScreenName } from '../content/screens/shownOn';
import { OWN_DEVICE } from '../content/screens/types';

/** Holds the name of a screen, a place and nobody's person, until its browser is closed. */
export const SCREEN_COOKIE = 'tooth-table-screen';

/**
 * The screen that asks: by `?screen=` in the address, else as an earlier address of this browser said; null for none.
 * `?screen=own` ends that.
 */
export function screenAsked({
	url,
	cookies,
}: {
	url: URL;
	cookies: Pick<Cookies, 'get' | 'set' | 'delete'>;
}): string | null {
	const asked = url.searchParams.get('screen');
	const kept = cleanScreenName(cookies.get(SCREEN_COOKIE));
	if (asked === OWN_DEVICE) {
		if (kept !== null) cookies.delete(SCREEN_COOKIE, { path: '/' });
		return null;
	}
	const name = cleanScreenName(asked);
	if (name === null) return kept;
	// a gallery's own net has no certificates; a page may write it too, when its tab comes to the front
	if (name !== kept)
		cookies.set(SCREEN_COOKIE, name, { path: '/', sameSite: 'strict', httpOnly: false, secure: false });
	return name;
}
