import { getStore } from '$lib/server/getStore';
import { viewFor } from '$lib/server/viewFor';
import { error } from '@sveltejs/kit';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = ({ url, depends }) => {
	depends('exhibit:now');
	const exhibit = getStore().current();
	if (!exhibit) return { specimens: [], sources: [] };
	if (!exhibit.rooms.includes('replacement')) error(404, 'This room is closed.');
	return {
		specimens: viewFor(exhibit, url.searchParams.get('lang') ?? '').specimens,
		sources: exhibit.sources,
	};
};
