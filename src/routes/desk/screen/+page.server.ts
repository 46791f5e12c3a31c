import { staffOnly } from '$lib/server/staffOnly';
import type { PageServerLoad } from './$types';

/** Nothing but the page itself: what it measures is kept by the browser on this screen. */
export const load: PageServerLoad = (event) => {
	staffOnly(event, 'corner');
};
