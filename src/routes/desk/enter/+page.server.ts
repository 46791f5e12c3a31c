import { redirect } from '@sveltejs/kit';
import { getStaff } from '$lib/server/staff/getStaff';
import { PASSPHRASE_LEAST } from '$lib/server/staff/passphraseRules';
import { isFromHere, sessionOf, staffDoor } from '$lib/server/staffOnly';
import type { PageServerLoad } from './$types';

/** Where to go once signed in: a page of staff, never another site's. */
const staffPage = (to: string | null): string =>
	to !== null && /^\/(desk|status)(\/[\w/-]*)?$/.test(to) ? to : '/desk';

/** The door of the desk: the first passphrase is set here, and later asked for. */
export const load: PageServerLoad = async (event) => {
	staffDoor(event);
	const staff = getStaff();
	await staff.ready;
	const to = staffPage(event.url.searchParams.get('to'));
	const lang = event.url.searchParams.get('lang');
	if (sessionOf(event, 'desk')) redirect(303, lang ? `${to}?lang=${encodeURIComponent(lang)}` : to);
	const { is } = staff.file.read();
	return {
		door: is === 'unset' && !isFromHere(event) ? ('not-here' as const) : is,
		wait_s: Math.ceil(staff.passphraseTries.wait(event.getClientAddress()) / 1000),
		least: PASSPHRASE_LEAST,
		to,
	};
};
