import { getStaff } from '$lib/server/staff/getStaff';
import { PASSPHRASE_LEAST } from '$lib/server/staff/passphraseRules';
import { staffOnly } from '$lib/server/staffOnly';
import type { PageServerLoad } from './$types';

/** Passphrase and PIN; for staff only. */
export const load: PageServerLoad = (event) => {
	staffOnly(event);
	const state = getStaff().file.read();
	return { least: PASSPHRASE_LEAST, hasPin: state.is === 'set' && state.record.pin !== undefined };
};
