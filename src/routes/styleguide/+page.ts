import { dev } from '$app/environment';
import { error } from '@sveltejs/kit';

/** For contributors only: in a gallery there is nothing at this address. */
export const load = () => {
	if (!dev) error(404, 'Not found');
};
