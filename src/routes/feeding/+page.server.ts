import { askedLanguage } from '$lib/server/askedLanguage';
import { getStore } from '$lib/server/getStore';
import { viewFor } from '$lib/server/viewFor';
import { error } from '@sveltejs/kit';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = ({ url, locals, depends }) => {
	depends('exhibit:now');
	const exhibit = getStore().current();
	if (!exhibit) return { feeding: null, specimens: [] };
	if (!exhibit.rooms.includes('feeding')) error(404, 'This room is closed.');
	const { feeding, specimens } = viewFor(exhibit, askedLanguage(url) ?? locals.firstLang);
	return { feeding, specimens };
};
