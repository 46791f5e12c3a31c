import { askedLanguage } from '$lib/server/askedLanguage';
import { getStore } from '$lib/server/getStore';
import { viewReplacement } from '$lib/server/viewReplacement';
import { error } from '@sveltejs/kit';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = ({ url, locals, depends }) => {
	depends('exhibit:now');
	const exhibit = getStore().current();
	if (!exhibit) return { replacement: null, sources: [] };
	if (!exhibit.rooms.includes('replacement')) error(404, 'This room is closed.');
	return {
		replacement: viewReplacement(exhibit, askedLanguage(url) ?? locals.firstLang),
		sources: exhibit.sources,
	};
};
